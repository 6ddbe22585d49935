import type { Ranged } from "@/lib/arc";
import { legAt, type RunSetup } from "@/lib/setup";
import type { PlanAsk } from "./ask";
import { draftRun } from "./draft-run";
import type { PlanIssue } from "./issues";
import { handLimits } from "./size";

/** Plate as it is sold, mm, from sheet to where a plan no longer changes. */
const tried: readonly number[] = [
  0.5, 0.8, 1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8, 10, 12, 15, 20, 25, 30, 40,
];

export interface PlateRange {
  /** null: no plate of those tried goes. */
  readonly thinnestMm: number | null;
  /** null too where the thickest that was tried (40 mm) still goes: it is filled in passes. */
  readonly thickestMm: number | null;
  /** What is in the way beyond each end. */
  readonly thinner: PlanIssue | null;
  readonly thicker: PlanIssue | null;
}

/** The plates this wire, input, joint and position carry; the thickness asked for does not matter. To 0.1 mm, inside. */
export function plateRange(ask: PlanAsk): PlateRange {
  const at = (thicknessMm: number): PlanIssue | null => {
    const drafted = draftRun({ ...ask, thicknessMm });
    return drafted.ok ? null : drafted.issues[0]!;
  };
  const stops = tried.map((mm) => ({ mm, stop: at(mm) }));
  const first = stops.findIndex(({ stop }) => stop === null);
  const last = stops.findLastIndex(({ stop }) => stop === null);
  if (first < 0)
    return { thinnestMm: null, thickestMm: null, thinner: stops[0]!.stop, thicker: stops[0]!.stop };
  const under = stops[first - 1] ?? null;
  const over = stops[last + 1] ?? null;
  return {
    thinnestMm:
      under === null ? stops[first]!.mm : Math.max(edge(at, stops[first]!.mm, under.mm), floorOf(under.stop)),
    thickestMm: over === null ? null : edge(at, stops[last]!.mm, over.mm),
    thinner: under?.stop ?? null,
    thicker: over?.stop ?? null,
  };
}

/**
 * The plate from which the wire is used, where that is what stops a thinner one. The check lets a plate be sold a tenth of a
 * millimetre short; what is said of the wire is not to.
 */
function floorOf(stop: PlanIssue | null): number {
  const found = stop?.finding;
  return found?.code === "plate-below-floor" ? Number(found.data["limit"] ?? 0) : 0;
}

/** Between a plate that goes and one that does not, the last tenth of a millimetre that goes. */
function edge(at: (mm: number) => PlanIssue | null, goes: number, not: number): number {
  let [good, bad] = [Math.round(goes * 10), Math.round(not * 10)];
  while (Math.abs(bad - good) > 1) {
    const middle = Math.round((good + bad) / 2);
    if (at(middle / 10) === null) good = middle;
    else bad = middle;
  }
  return good / 10;
}

/** One pace and the leg it leaves in one pass. */
export interface LegAtPace {
  readonly travelMmPerMin: number;
  readonly leg: Ranged;
}

/** The legs that the paces of a hand leave at the feed of a planned set-up; empty where the joint is no fillet. */
export function legsAtPaces(setup: RunSetup): readonly LegAtPace[] {
  const { slow, fast } = handLimits(setup);
  const paces = [100, 150, 200, 250, 300, 400, 500, 600].filter((mm) => mm >= slow && mm <= fast);
  return paces.flatMap((travelMmPerMin) => {
    const leg = legAt(setup, setup.wireFeedMPerMin, travelMmPerMin);
    return leg === null ? [] : [{ travelMmPerMin, leg }];
  });
}

/** Seconds for each 25 mm at a travel in mm/min. */
export function secondsFor25mm(travelMmPerMin: number): number {
  return (25 / travelMmPerMin) * 60;
}
