import { describe, expect, it } from "vitest";
import {
  alongRows,
  electrodeClass,
  sizesWithRows,
  voltsAtFeed,
  windowLines,
  type WindowQuery,
} from "@/lib/trade";
import { electrodeClasses } from "@/lib/trade/tables/electrode-classes";
import { electrodePositions } from "@/lib/trade/electrode-class";
import { inDepth } from "../../setup/in-depth";

const IPM = 0.0254;
const query = (id: string, diameterMm: number, gas: WindowQuery["gas"]): WindowQuery => ({
  electrode: electrodeClass(id)!,
  diameterMm,
  gas,
  transfer: null,
  positions: ["flat"],
});

/** Solid wire is asked by its transfer: rows of two transfers are no neighbours. */
const everywhere: readonly WindowQuery[] = electrodeClasses.flatMap((electrode) =>
  sizesWithRows(electrode).flatMap((diameterMm) =>
    (electrode.gases.length === 0 ? [null] : electrode.gases).flatMap((gas) =>
      electrodePositions.flatMap((position) =>
        (electrode.process === "GMAW" ? (["short-circuit", "spray"] as const) : [null]).map((transfer) => ({
          electrode,
          diameterMm,
          gas,
          transfer,
          positions: [position],
        })),
      ),
    ),
  ),
);

describe("what goes with a feed", () => {
  it("is the printed row itself where there is one row (E309LT0-3 data sheet: 300 to 700 in/min, 25 to 28 V)", () => {
    const volts = alongRows(query("E309LT0-3", 0.9, "none"), "volts");
    expect(volts(300 * IPM)).toBeCloseTo(25, 9);
    expect(volts(500 * IPM)).toBeCloseTo(26.5, 9);
    expect(volts(700 * IPM)).toBeCloseTo(28, 9);
    expect(volts(299 * IPM)).toBeNull();
    expect(volts(701 * IPM)).toBeNull();
  });

  it("keeps the ends that several rows share, and lies near the trade's bench points between", () => {
    const volts = alongRows(query("E71T-11", 0.9, "none"), "volts");
    // 400 in/min is the end of the one row that reaches there: 20 V.
    expect(volts(400 * IPM)).toBeCloseTo(20, 9);
    // Common practice, no source: 110 in/min at 15 V, 245 at 16.5, 280 at 17.
    for (const [ipm, bench] of [
      [110, 15],
      [245, 16.5],
      [280, 17],
    ] as const)
      expect(Math.abs(volts(ipm * IPM)! - bench)).toBeLessThan(0.7);
  });

  it("never falls as the feed rises, never jumps, and is allowed by the rows, for every wire, gas and position", () => {
    let met = 0;
    for (const one of everywhere.filter((_, i) => i % inDepth(12, 1) === 0)) {
      const lines = windowLines(one).filter(({ volts }) => volts !== null);
      if (lines.length === 0) continue;
      const curve = alongRows(one, "volts");
      const low = Math.min(...lines.map(({ feedMPerMin }) => feedMPerMin[0]));
      const high = Math.max(...lines.map(({ feedMPerMin }) => feedMPerMin[1]));
      let before: number | null = null;
      for (let i = 0; i <= 40; i += 1) {
        const feed = low + ((high - low) * i) / 40;
        const volts = curve(feed);
        if (volts === null) {
          before = null;
          continue;
        }
        met += 1;
        const { low: least, high: most } = voltsAtFeed(one, feed)!;
        expect(volts).toBeGreaterThanOrEqual(least - 1e-9);
        expect(volts).toBeLessThanOrEqual(most + 1e-9);
        // A fortieth of the whole span, and a row's beginning or end spread over a metre of feed.
        if (before !== null) {
          expect(volts).toBeGreaterThanOrEqual(before - 1e-9);
          expect(volts - before).toBeLessThan(0.15 + 2.5 * ((high - low) / 40));
        }
        before = volts;
      }
    }
    expect(met).toBeGreaterThan(inDepth(300, 5000));
  });
});
