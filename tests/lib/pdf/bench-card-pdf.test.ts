import { describe, expect, it } from "vitest";
import { assessBead, emptyBeadContent } from "@/lib/assess";
import { emptyDrawing, newMark } from "@/lib/marks";
import { benchCardPdf } from "@/lib/pdf";
import { benchCard, type BenchCardDocument, type BenchSetting } from "@/lib/report";
import { emptyRunSetup } from "@/lib/setup";
import { metric } from "@/lib/units";
import { plain, readPdf } from "./read-pdf";

const setting = (label: string, ...values: readonly string[]): BenchSetting => ({
  label,
  values,
  isChanged: label === "Voltage",
});

const card: BenchCardDocument = {
  number: 47,
  revision: 3,
  title: "Tee joint, second run",
  day: "25 November 2026",
  inspectorFirst: false,
  headline: "Lower the volts.",
  steps: ["Voltage from 29 V down to 25.5 V"],
  grounds: ["Because of: Volts too high (likely).", "Expect: undercut less or gone."],
  settings: [
    setting("Wire or rod", "E71T-11 0.9 mm", "E71T-11 0.035 in"),
    setting("Voltage", "25.5 V"),
    setting("Tip to work", "19 mm", "3/4 in"),
  ],
  cautions: ["Acceptance belongs to the governing code.", "Slag is hot and flies."],
};

/** Every field of the set-up known, the longest title, a crack: the most a card can come to hold. */
const full: BenchCardDocument = benchCard(
  assessBead({
    id: "b",
    number: 1047,
    revision: 112,
    createdAt: "2026-11-25T10:00:00.000Z",
    photos: [{ id: "p", sha256: "0".repeat(64), widthPx: 100, heightPx: 100 }],
    content: {
      ...emptyBeadContent,
      title: "Outside corner of the hopper leg ".repeat(4).slice(0, 120).trim(),
      setup: {
        ...emptyRunSetup,
        process: "FCAW-G",
        transfer: "spray",
        electrodeClass: "E71T-12M-JH8",
        electrodeDiameterMm: 1.2,
        polarity: "DCEP",
        gas: "75Ar-25CO2",
        gasFlowLPerMin: 18,
        wireFeedMPerMin: 8.4,
        volts: 27.5,
        amps: 240,
        ctwdMm: 19,
        travelDirection: "drag",
        travelAngleDeg: 15,
        workAngleDeg: 45,
        travelSpeedMmPerMin: 305,
        joint: "outside-corner",
        position: "vertical",
        progression: "up",
        baseMetal: "stainless",
        thicknessMm: 12.7,
        fitUpGapMm: 1.5,
        surface: "mill-scale",
        inputPower: "400V-3ph",
        outdoors: true,
        passCount: 12,
        targetLegMm: 8,
      },
      photos: [
        {
          id: "p",
          role: "face",
          drawing: {
            ...emptyDrawing,
            marks: [newMark("m", "crater-crack", { kind: "point", at: { x: 5, y: 5 }, radius: null })],
          },
        },
      ],
    },
  }),
  metric,
);

const pdfOf = (one: BenchCardDocument) =>
  benchCardPdf({
    card: one,
    recordUrl: "http://127.0.0.1:3000/beads/b",
    ink: "#14171c",
    createdAt: "2026-11-25T10:00:00.000Z",
  });

const wordsOf = (one: BenchCardDocument): readonly string[] => [
  one.title,
  one.day,
  one.headline,
  ...one.steps,
  ...one.settings.flatMap(({ label, values }) => [label, ...values]),
  ...one.cautions,
];

/** As the faces write it: they have no small two below the line. */
const asWritten = (text: string): string => text.replaceAll("₂", "2");
const withoutSpaces = (text: string): string => plain(asWritten(text)).replace(/\s+/g, "");

describe.each([
  ["an ordinary card", card],
  ["the fullest card", full],
])("%s", (_, one) => {
  it("says everything on one A5 page, nothing outside or on top of another line", async () => {
    const pages = await readPdf(await pdfOf(one));
    expect(pages).toHaveLength(1);
    const [page] = pages;
    const text = withoutSpaces(page!.text);
    expect(wordsOf(one).filter((words) => !text.includes(withoutSpaces(words)))).toEqual([]);
    const [width, height] = [(210 * 72) / 25.4, (148 * 72) / 25.4];
    const items = page!.items.filter(({ text }) => text.trim() !== "");
    expect(
      items.filter(({ x, y, width: w }) => x < 20 || x + w > width - 20 || y < 20 || y > height - 20),
    ).toEqual([]);
    const heights = new Map<string, number>();
    for (const { x, y } of items) {
      const place = `${x.toFixed(0)} ${y.toFixed(0)}`;
      heights.set(place, (heights.get(place) ?? 0) + 1);
    }
    expect([...heights.values()].filter((count) => count > 1)).toEqual([]);
    // No setting reaches down to the cautions.
    const yOf = (words: string) => items.find(({ text }) => asWritten(words).startsWith(text.trim()))!.y;
    const lowest = Math.min(...one.settings.flatMap(({ values }) => values.map(yOf)));
    expect(lowest).toBeGreaterThan(yOf(one.cautions[0]!) + 6);
  });

  it("can be walked by a screen reader, and is the same bytes for the same input", async () => {
    const bytes = await pdfOf(one);
    const [page] = await readPdf(bytes);
    for (const tag of ["H1", "H2", "L", "LI", "LBody"]) expect(page!.tags).toContain(tag);
    expect(page!.tags.filter((tag) => tag === "LI")).toHaveLength(one.settings.length);
    expect(Buffer.compare(await pdfOf(one), bytes)).toBe(0);
  });
});

describe("the inspector's word", () => {
  it("stands only where an inspector comes first", async () => {
    const has = async (one: BenchCardDocument) =>
      (await readPdf(await pdfOf(one)))[0]!.text.includes("qualified inspector");
    expect(await has(full)).toBe(true);
    expect(await has(card)).toBe(false);
  });
});
