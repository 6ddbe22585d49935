import { beforeAll, describe, expect, it } from "vitest";
import { listCriteria } from "@/lib/accept";
import { assessBead, emptyBeadContent } from "@/lib/assess";
import { addDemoLimits } from "@/lib/demo/limits";
import { emptyDrawing, type Mark } from "@/lib/marks";
import { sheetPdf } from "@/lib/pdf";
import { sheetDocument, type SheetDocument } from "@/lib/report";
import { emptyRunSetup, exampleSetups } from "@/lib/setup";
import { assessContext } from "@/lib/shop";
import type { ImperfectionId } from "@/lib/trade";
import { inch, metric, type UnitPreferences } from "@/lib/units";
import { inDepth } from "../../setup/in-depth";
import { useFreshDb } from "../../setup/fresh-db";
import { demoSheets, type DemoSheet } from "./demo-sheets";
import { readPdf, type ReadPage } from "./read-pdf";
import { inputFor, jpeg } from "./sheet-of";
import { unsaid } from "./sheet-words";

const fresh = useFreshDb();
let picture: Buffer;
beforeAll(async () => {
  picture = await jpeg();
});

const pagesOf = async (sheet: SheetDocument): Promise<readonly ReadPage[]> =>
  readPdf(await sheetPdf(inputFor(sheet, picture)));

/** What is read is not smaller than this, sources and the like than that; points. */
const [READ, FINE] = [8.5, 7.5];

/** The sheet without what may stand in fine print: where a weight or a clause comes from. */
function toBeRead(sheet: SheetDocument): Partial<SheetDocument> {
  const clauses = sheet.verdict?.clauses.map((row) => ({ ...row, clause: "" })) ?? [];
  return { ...sheet, origin: "", verdict: sheet.verdict && { ...sheet.verdict, clauses } };
}

const atLeast = (page: ReadPage, size: number): ReadPage => ({
  ...page,
  items: page.items.filter((item) => item.text.trim() === "" || item.size > size - 0.01),
});

/** Words on the photo itself are as large as their marks, whatever the size of the page. */
const onPhoto = ({ imageBoxes: [box] }: ReadPage, { x, y }: { x: number; y: number }): boolean =>
  box !== undefined && x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height;

/** Where a sheet goes on to a second page, leaves a word out, sets one too small or outside of the paper. */
async function amiss(name: string, sheet: SheetDocument): Promise<readonly string[]> {
  const pages = await pagesOf(sheet);
  const [page] = pages;
  if (!page || pages.length > 1) return [`${name}: ${pages.length} pages`];
  const items = page.items.filter((item) => item.text.trim() !== "" && !onPhoto(page, item));
  return [
    ...unsaid(sheet, pages).map((words) => `${name} does not say ${words}`),
    ...unsaid(toBeRead(sheet), [atLeast(page, READ)]).map((words) => `${name} says too small ${words}`),
    ...items.filter(({ size }) => size < FINE - 0.01).map(({ text }) => `${name}: ${text} is too small`),
    ...items
      .filter(({ x, y, width }) => x < 33 || x + width > 595.28 - 33 || y < 14 || y > 841.89 - 28)
      .map(({ text }) => `${name}: ${text} lies outside`),
  ];
}

describe("the demo's sheets", () => {
  let demo: readonly DemoSheet[] = [];
  beforeAll(async () => {
    await addDemoLimits(fresh().pen);
    const context = await assessContext(fresh().db);
    const both = await Promise.all([metric, inch].map((units) => demoSheets(units, context)));
    demo = both.flatMap((sheets, one) => sheets.filter((_, i) => inDepth(i % 6 === 3 * one, true)));
  });

  it("take one page each, and every word is on it", async () => {
    expect(demo.length).toBeGreaterThan(inDepth(6, 40));
    const found = [];
    for (const { picture: name, sheet } of demo) found.push(...(await amiss(name, sheet)));
    expect(found).toEqual([]);
  });
});

/** Six marks of different kinds, each a row of its own; some that go to an inspector first. */
const sixes: readonly (readonly ImperfectionId[])[] = [
  ["undercut", "surface-porosity", "trapped-slag", "spatter", "overlap", "convex-bead"],
  ["toe-crack", "undercut", "arc-strike", "surface-porosity", "spatter", "open-crater"],
  ["uneven-legs", "undersized", "concave-face", "uneven-width", "poor-start", "wormhole"],
];

function madeUp(
  kinds: readonly ImperfectionId[],
  criteriaId: string,
  setup: (typeof exampleSetups)[number]["setup"],
  units: UnitPreferences,
): SheetDocument {
  const marks = kinds.map((imperfection, i): Mark => ({
    id: `m${i}`,
    imperfection,
    shape: {
      kind: "line",
      points: [
        { x: 300 + 200 * i, y: 700 + i },
        { x: 420 + 200 * i, y: 720 },
      ],
    },
    place: i % 2 ? "lower-toe" : "upper-toe",
    stretch: "run",
    patterns: [],
    gauge: [],
    note: "",
  }));
  const scale = { kind: "two-points", a: { x: 103, y: 1207 }, b: { x: 503, y: 1207 }, lengthMm: 20 } as const;
  const content = {
    ...emptyBeadContent,
    title: "T-joint on 10 mm, second run of the morning",
    welder: "Wilhelmina Ostrowska",
    setup,
    judgement: {
      ...emptyBeadContent.judgement,
      criteriaId,
      note: "Stopped once to clear the tip; the second half is the better one.",
    },
    photos: [{ id: "p1", role: "face" as const, drawing: { ...emptyDrawing, scale, marks } }],
  };
  const photos = [{ id: "p1", sha256: "1".repeat(64), widthPx: 2000, heightPx: 1500 }];
  const bead = {
    id: "b",
    number: 1234,
    revision: 12,
    createdAt: "2026-09-25T10:00:00.000Z",
    content,
    photos,
  };
  return sheetDocument(assessBead(bead), units);
}

/** What these ask of a weld is longest; with six kinds of marks their sheets go on to a second page. */
const longest = ["iso-9606-1", "aws-d1-1-static", "aws-d1-1-tubular"];

describe("a made-up bead of six marks", () => {
  const sheetFor = (id: string, i: number): SheetDocument => {
    const example = exampleSetups[i % exampleSetups.length];
    const kinds = sixes[i % sixes.length];
    if (!example || !kinds) throw new Error("no set-ups, no marks");
    return madeUp(kinds, id, example.setup, i % 2 ? inch : metric);
  };
  const sets = listCriteria().map(({ id }, i) => [id, i] as const);

  it("is judged by every set there is", () => {
    expect(sets.length).toBeGreaterThan(15);
    expect(longest.filter((id) => !sets.some(([one]) => one === id))).toEqual([]);
  });

  it.each(sets.filter(([id, i]) => !longest.includes(id) && inDepth(i % 5 === 0, true)))(
    "judged by %s takes one page, and every word is on it",
    async (id, i) => {
      expect(await amiss(id, sheetFor(id, i))).toEqual([]);
    },
  );

  it.each(sets.filter(([id]) => longest.slice(inDepth(-1, 0)).includes(id)))(
    "judged by %s says every word",
    async (id, i) => {
      const sheet = sheetFor(id, i);
      expect(unsaid(sheet, await pagesOf(sheet))).toEqual([]);
    },
  );
});

describe("what does not fit one page", () => {
  it("goes on as it did: two photos, or a note as long as a page", async () => {
    const one = madeUp(sixes[0] ?? [], "iso-5817-c", exampleSetups[0]?.setup ?? emptyRunSetup, metric);
    const [photo] = one.photos;
    if (!photo) throw new Error("no photo");
    const two = { ...one, photos: [photo, { ...photo, sha256: "2".repeat(64) }] };
    const long = { ...one, note: Array.from({ length: 60 }, (_, i) => `line ${i}`).join("\n") };
    for (const sheet of [two, long]) {
      const pages = await pagesOf(sheet);
      expect(pages.length).toBeGreaterThan(1);
      expect(unsaid(sheet, pages)).toEqual([]);
    }
  });
});
