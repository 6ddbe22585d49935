import { describe, expect, it } from "vitest";
import { CardSchema, proposeRanges, type Card } from "@/lib/cards";
import { SteelSchema } from "@/lib/procedure";
import { cardSheet, cardWatchLines } from "@/lib/report";
import { inch, metric } from "@/lib/units";
import { base } from "../trials/simulated";

const steel = SteelSchema.parse({ carbonPercent: 0.18, manganesePercent: 1.2, hydrogenMlPer100G: 5 });
const card: Card = CardSchema.parse({
  title: "Tee on 5 mm",
  setup: base,
  ranges: proposeRanges(base),
  code: "aws-d1-1",
  steel,
});

describe("the card in words", () => {
  it("says first that it is no qualified procedure, whatever is on it", () => {
    for (const one of [card, { ...card, steel: null, ranges: [] }])
      expect(cardSheet(one, 3, metric).statement).toMatch(/not a qualified procedure/);
  });

  it("has the steel's equivalents (CET = C + Mn/10, IIW = C + Mn/6) and does not lean on preheat outside its range", () => {
    const { steel: rows } = cardSheet(card, 3, metric);
    const of = (label: string) => rows.find((row) => row.label.includes(label));
    expect(of("IIW")?.value).toBe("0.38 %");
    expect(of("CET")?.value).toBe("0.30 %");
    // Method B was made for 10 mm and more; this plate is 5 mm.
    expect(of("Preheat")?.note).toMatch(/Outside what the method was made for \(.*thickness/);
    expect(rows.filter(({ label }) => label.startsWith("Cooling"))).not.toHaveLength(0);
  });

  it("gives preheat by method B on thick plate: formula by hand", () => {
    const thick = cardSheet(
      {
        ...card,
        setup: { ...base, thicknessMm: 30, volts: 20, amps: 200, travelSpeedMmPerMin: 200 },
        ranges: [],
      },
      1,
      metric,
    );
    const q = (0.8 * 20 * 200 * 60) / 1000 / 200;
    const cet = 0.3;
    const byHand = 697 * cet + 160 * Math.tanh(30 / 35) + 62 * 5 ** 0.35 + (53 * cet - 32) * q - 328;
    const row = thick.steel.find(({ label }) => label.includes("Preheat"))!;
    expect(row.value).toBe(`from ${byHand.toFixed(0)} °C`);
    expect(row.note).toMatch(/memory|check/i);
  });

  it("names what it cannot say: no certificate, stainless, the annex nobody read", () => {
    expect(cardSheet({ ...card, steel: null }, 1, metric).steelNote).toMatch(/certificate/);
    expect(cardSheet(card, 1, metric).steelNote).toMatch(/annex are not on this card/);
    expect(cardSheet({ ...card, setup: { ...base, baseMetal: "stainless" } }, 1, metric)).toMatchObject({
      steel: [],
    });
  });

  it("leaves how far a variable may change to the code", () => {
    const { essentials } = cardSheet(card, 1, metric);
    expect(essentials.every(({ note }) => note?.includes("check your code"))).toBe(true);
  });

  it("speaks the reader's units", () => {
    const feed = (units: typeof metric) =>
      cardSheet(card, 1, units).dials.find(({ label }) => label === "Wire feed")!.range;
    expect(feed(metric)).toContain("m/min");
    expect(feed(inch)).toContain("in/min");
  });
});

describe("a bead that is run by a card", () => {
  const watched = { ...card, ranges: [{ field: "volts" as const, low: 23, high: 26 }] };
  it("is told what left the card", () => {
    expect(cardWatchLines(watched, { ...base, volts: 27.5 }, metric)).toEqual([
      "Voltage 27.5 V, card 23 to 26 V.",
    ]);
    expect(cardWatchLines(watched, { ...base, volts: 24 }, metric)).toEqual([]);
  });
  it("is told what is not watched, and what it was run with otherwise", () => {
    expect(cardWatchLines(watched, { ...base, volts: null }, metric)[0]).toMatch(
      /^Not said, so not watched: /,
    );
    expect(cardWatchLines(watched, { ...base, volts: 24, position: "flat" }, metric)[0]).toMatch(
      /^Position: .*card/,
    );
  });
});
