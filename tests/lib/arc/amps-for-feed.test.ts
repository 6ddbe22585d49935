import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ampsForFeed, extensionFromCtwdMm, feedForAmps, type WireKind } from "@/lib/arc";
import { burnOffFor } from "@/lib/arc/burn-off-for";
import { wireKinds } from "@/lib/arc/tables/burn-off-rows";
import { electrodeClass } from "@/lib/trade";
import { windowRows } from "@/lib/trade/tables/window-rows";

describe("amps at a feed", () => {
  const wires = wireKinds.flatMap((kind) =>
    [0.8, 0.9, 1, 1.2, 1.4, 1.6, 1.7].map((diameterMm) => ({ kind, diameterMm })),
  );
  const wireArb = fc.constantFrom(...wires.filter(({ kind, diameterMm }) => burnOffFor(kind, diameterMm)));

  it("grows with the feed, shrinks with the extension, and feedForAmps turns it round", () => {
    fc.assert(
      fc.property(
        wireArb,
        fc.double({ min: 0.3, max: 20, noNaN: true }),
        fc.double({ min: 5, max: 30, noNaN: true }),
        (wire, feed, extension) => {
          const at = ampsForFeed(wire, feed, extension)!;
          expect(at.amps).toBeGreaterThan(0);
          expect(ampsForFeed(wire, feed * 1.02, extension)!.amps).toBeGreaterThan(at.amps);
          expect(ampsForFeed(wire, feed, extension + 1)!.amps).toBeLessThan(at.amps);
          expect(Math.abs(feedForAmps(wire, at.amps, extension)! / feed - 1)).toBeLessThan(1e-9);
        },
      ),
      { numRuns: 2000, seed: 3 },
    );
  });

  it("outside its data it still answers, with bounds the wider the further out", () => {
    const wire = { kind: "self-shielded", diameterMm: 0.9 } as const;
    const [, high] = burnOffFor("self-shielded", 0.9)!.range;
    let spread = 0;
    for (const times of [1, 1.3, 1.6, 2, 3]) {
      const feed = feedForAmps(wire, high * times, 15)!;
      const at = ampsForFeed(wire, feed, 15)!;
      expect(at.inRange).toBe(times === 1);
      expect(at.highAmps / at.lowAmps).toBeGreaterThan(spread);
      spread = at.highAmps / at.lowAmps;
    }
    // 60 A at 400 in/min is no answer of any such wire, however far out the figure lies.
    const at400 = ampsForFeed(wire, 400 * 0.0254, extensionFromCtwdMm(19))!;
    expect(at400.inRange).toBe(false);
    expect(at400.lowAmps).toBeGreaterThan(2 * 60);
  });

  it("is null for what it has no data of, or what cannot be", () => {
    expect(ampsForFeed({ kind: "self-shielded", diameterMm: 3 }, 5, 15)).toBeNull();
    expect(ampsForFeed({ kind: "solid", diameterMm: 1.2 }, NaN, 15)).toBeNull();
    expect(ampsForFeed({ kind: "solid", diameterMm: 1.2 }, 5, -1)).toBeNull();
    expect(extensionFromCtwdMm(19)).toBe(15.5);
    expect(extensionFromCtwdMm(12, "short-circuit")).toBe(10.5);
    expect(extensionFromCtwdMm(2)).toBe(0);
  });
});

/** Both tables are the same wires': what one row pairs the other must be able to melt. */
describe("feed and amps of every window row, by burn-off", () => {
  const kindOf = (id: string, process: string): WireKind =>
    process === "GMAW"
      ? "solid"
      : electrodeClass(id)!.metal === "stainless"
        ? "stainless-cored"
        : process === "FCAW-G"
          ? "flux-cored"
          : "self-shielded";
  const rows = windowRows.wire.filter((one) => one.wireFeedIpm && one.amps);

  it.each(
    rows.map((one) => [`${one.classes[0]} ${one.diametersIn.join(" ")} ${one.wireFeedIpm!.join("-")}`, one]),
  )("%s", (_, { classes: [id = ""], diametersIn, wireFeedIpm, amps, ctwdIn, transfer, ampsUnpaired }) => {
    if (ampsUnpaired) return;
    const kind = kindOf(id, electrodeClass(id, id.startsWith("ER") ? "GMAW" : null)!.process);
    // Tip to work where the row gives none: the class's own, 3/4 to 1 in; both rows are read at its lower half.
    const ctwd = ctwdIn ?? [0.75, 0.85];
    for (const inch of diametersIn)
      for (const end of [0, 1] as const) {
        const extension = extensionFromCtwdMm(ctwd[end] * 25.4, transfer ?? null);
        const at = ampsForFeed({ kind, diameterMm: inch * 25.4 }, wireFeedIpm![end] * 0.0254, extension)!;
        expect(at.lowAmps).toBeLessThanOrEqual(amps![end]);
        expect(at.highAmps).toBeGreaterThanOrEqual(amps![end]);
      }
  });

  it("catches feeds that do not melt off with the amps: 900 in/min beside 250 A, 150 beside 150", () => {
    const at = (ipm: number) =>
      ampsForFeed({ kind: "flux-cored", diameterMm: 1.143 }, ipm * 0.0254, extensionFromCtwdMm(20))!;
    expect(at(900).lowAmps).toBeGreaterThan(250);
    expect(at(150).highAmps).toBeLessThan(150);
  });

  it("only rows from memory are left unpaired", () => {
    for (const one of rows.filter(({ ampsUnpaired }) => ampsUnpaired))
      expect(one.source.confidence).toBe("memory");
  });
});
