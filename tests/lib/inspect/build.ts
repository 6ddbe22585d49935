import { assessBead, emptyBeadContent, type BeadContent } from "@/lib/assess";
import {
  emptyInspection,
  InstrumentSchema,
  JobContentSchema,
  makeRecord,
  wholeWeld,
  type InspectionDraft,
  type Instrument,
  type JobContent,
  type SignedRecord,
} from "@/lib/inspect";
import { emptyDrawing, type Drawing, type Mark } from "@/lib/marks";
import { emptyRunSetup } from "@/lib/setup";
import { imperfectionIds } from "@/lib/trade";

export const WIDTH_PX = 1600;
export const HEIGHT_PX = 1200;
export const sha = (index: number): string => index.toString(16).padStart(64, "0");

/** 20 px to the millimetre. */
const scale: Drawing["scale"] = {
  kind: "two-points",
  a: { x: 103, y: 1100 },
  b: { x: 503, y: 1100 },
  lengthMm: 20,
};

export const undercut = (gauge: Mark["gauge"] = []): Mark => ({
  id: "u1",
  imperfection: "undercut",
  shape: {
    kind: "line",
    points: [
      { x: 331, y: 607 },
      { x: 547, y: 643 },
    ],
  },
  place: "upper-toe",
  stretch: "run",
  patterns: ["continuous"],
  gauge,
  note: "",
});

export const job: JobContent = JobContentSchema.parse({
  title: "Bracket run 4",
  maker: "Harrow Basin Training Bay",
  procedure: "WPS-12",
  process: "FCAW-S",
  criteriaId: "iso-5817-c",
  parts: [{ id: "p1", name: "Bracket", drawing: "D-100", material: "S235", thicknessMm: 10 }],
  welds: [
    {
      id: "w1",
      number: "W1",
      partId: "p1",
      joint: "tee",
      position: "horizontal",
      welderId: "pw",
      lengthMm: 300,
    },
  ],
});

export const draft: InspectionDraft = {
  ...emptyInspection,
  examinedOn: "2026-11-25",
  look: "direct",
  lightLux: 520,
  distanceMm: 400,
  angleDeg: 60,
  surface: "brushed",
  instrumentIds: ["g"],
  welds: [{ weldId: "w1", seen: wholeWeld, seenNote: "" }],
  qualification: { certificate: "VT-204", level: "2", expiresOn: "2027-05-01" },
};

export const gauge: Instrument & { id: string } = {
  id: "g",
  ...InstrumentSchema.parse({ kind: "fillet-gauge", name: "Gauge 2", serial: "F-2", dueOn: "2027-01-01" }),
};

/** A bead with `count` photos and a mark on each. */
export function beadOf(count: number, change: Partial<BeadContent> = {}, marks: Mark[] = [undercut()]) {
  const indices = Array.from({ length: count }, (_, i) => i + 1);
  const content: BeadContent = {
    ...emptyBeadContent,
    title: "Leg",
    welder: "Idris Quenby",
    setup: { ...emptyRunSetup, process: "FCAW-S", joint: "tee", thicknessMm: 10, targetLegMm: 6 },
    judgement: { ...emptyBeadContent.judgement, criteriaId: "iso-5817-c" },
    photos: indices.map((i) => ({ id: `f${i}`, role: "face", drawing: { ...emptyDrawing, scale, marks } })),
    ...change,
  };
  const photos = indices.map((i) => ({
    id: `f${i}`,
    sha256: sha(i),
    widthPx: WIDTH_PX,
    heightPx: HEIGHT_PX,
  }));
  return {
    id: "b1",
    number: 5,
    revision: 3,
    weldId: "w1",
    createdAt: "2026-11-25T10:00:00.000Z",
    content,
    photos,
  };
}

/** A bead that meets every clause of ISO 5817 level C: nothing marked, all looked for, its sizes read with `instrument`. */
export function soundBead(instrument = "Gauge 2, no. F-2") {
  const sizes = [
    ["leg-1", 6.2],
    ["leg-2", 6.2],
    ["throat", 4.4],
    ["convexity", 0],
    ["weld-length", 300],
  ] as const;
  const readings = sizes.map(([quantity, value]) => ({ quantity, value, instrument, resolution: 0.1 }));
  const weld = { ...emptyBeadContent.judgement.weld, singleSided: true, transverseToTension: false };
  const judgement = { ...emptyBeadContent.judgement, criteriaId: "iso-5817-c", readings, weld };
  return beadOf(1, { judgement: { ...judgement, lookedFor: [...imperfectionIds] } }, []);
}

export function recordOf(
  change: {
    job?: Partial<JobContent>;
    draft?: Partial<InspectionDraft>;
    instruments?: (Instrument & { id: string })[];
    beads?: ReturnType<typeof beadOf>[];
  } = {},
): SignedRecord {
  return makeRecord({
    inspection: { id: "i1", number: 1 },
    job: { id: "j1", number: 1, revision: 2, content: { ...job, ...change.job } },
    criteria: "ISO 5817 level C",
    draft: { ...draft, ...change.draft },
    instruments: change.instruments ?? [gauge],
    marks: { pw: "W-07" },
    beads: (change.beads ?? [beadOf(1)]).map((one) => assessBead(one)),
  });
}

export const signature = {
  revision: 1,
  signedAt: "2026-11-25T12:00:00.000Z",
  signer: { personId: "pi", mark: "I-03", nameHash: sha(9) },
  acknowledgement: "Seen.",
  reason: null,
  previousDigest: null,
};
