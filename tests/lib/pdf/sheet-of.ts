import sharp from "sharp";
import { assessBead, emptyBeadContent, type BeadContent } from "@/lib/assess";
import { emptyDrawing, type Drawing, type Mark, type ScenePalette } from "@/lib/marks";
import { sheetDocument, type SheetDocument } from "@/lib/report";
import { emptyRunSetup } from "@/lib/setup";
import { metric } from "@/lib/units";

export const WIDTH_PX = 2000;
export const HEIGHT_PX = 1500;

const ink = { line: "#102030", casing: "#ffffff", onLine: "#ffffff" };
export const palette: ScenePalette = {
  inks: { gas: ink, shape: ink, fusion: ink, crack: ink, slag: ink, surface: ink, guide: ink },
  text: "#14171c",
  halo: "#ffffff",
};

/** 20 px to the millimetre. */
const scale: Drawing["scale"] = {
  kind: "two-points",
  a: { x: 103, y: 1207 },
  b: { x: 503, y: 1207 },
  lengthMm: 20,
};

export const knownPoints = [
  { x: 331, y: 707 },
  { x: 547, y: 743 },
] as const;

const undercut = (id: string, note: string): Mark => ({
  id,
  imperfection: "undercut",
  shape: { kind: "line", points: [...knownPoints] },
  place: "upper-toe",
  stretch: "run",
  patterns: ["continuous"],
  gauge: [],
  note,
});

const sha = (index: number): string => index.toString(16).padStart(64, "0");

/** A bead with `count` photos, a mark on each, criteria chosen and everything on the sheet filled in. */
export function sheetOf(count: number, change: Partial<BeadContent> = {}): SheetDocument {
  const indices = Array.from({ length: count }, (_, i) => i + 1);
  const content: BeadContent = {
    ...emptyBeadContent,
    title: "Tee joint, second run",
    welder: "Łucja Wierzbowska",
    setup: {
      ...emptyRunSetup,
      process: "FCAW-S",
      electrodeClass: "E71T-11",
      polarity: "DCEP",
      volts: 19.5,
      joint: "tee",
      thicknessMm: 10,
      targetLegMm: 6,
    },
    judgement: {
      ...emptyBeadContent.judgement,
      criteriaId: "iso-5817-c",
      lookedFor: ["overlap"],
      note: "First line.\nSecond line.",
    },
    photos: indices.map((i) => ({
      id: `p${i}`,
      role: "face",
      drawing: { ...emptyDrawing, scale, marks: [undercut(`u${i}`, `note of mark ${i}`)] },
    })),
    ...change,
  };
  const photos = indices.map((i) => ({
    id: `p${i}`,
    sha256: sha(i),
    widthPx: WIDTH_PX,
    heightPx: HEIGHT_PX,
  }));
  const bead = { id: "b", number: 47, revision: 3, createdAt: "2026-11-25T10:00:00.000Z", content, photos };
  return sheetDocument(assessBead(bead), metric);
}

export async function jpeg(): Promise<Buffer> {
  const background = { r: 120, g: 118, b: 110 };
  return sharp({ create: { width: 80, height: 60, channels: 3, background } })
    .jpeg()
    .toBuffer();
}

export const inputFor = (sheet: SheetDocument, picture: Uint8Array) => ({
  sheet,
  photos: new Map(sheet.photos.map(({ sha256 }) => [sha256, picture])),
  digest: "5e".repeat(32),
  recordUrl: "http://127.0.0.1:3000/beads/b",
  palette,
  createdAt: "2026-11-25T10:00:00.000Z",
});
