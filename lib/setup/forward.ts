import { legForRun, onePassLimits, passesForLeg, travelForLeg, type PassLimit, type Ranged } from "@/lib/arc";
import { alongRows, ampsForThickness, AMPS_RULE_MAX_MM, isFillet } from "@/lib/trade";
import { wireOf } from "./current";
import { isPositionOut } from "./position";
import type { RunSetup } from "./run-setup";
import { windowQueryFor } from "./window-for";

/**
 * What a set-up is to be expected to do: the volts and distance that go with a feed, the current a plate asks for, the leg
 * of a pass and how many a leg takes. The one change and a plan reckon by this alone, so that they agree. The current
 * itself is `currentAt`.
 */

/** Out of position feed and volts stand 30 to 40 % below their flat settings; the middle. Common practice. */
export const OUT_OF_POSITION_SHARE = 0.65;

/** A leg this much over what a pass carries in practice is still laid in one: the limit is round. Own estimate. */
const A_LITTLE_OVER = 1.27;

/** For the seal over the tables. */
export const forwardFigures = { OUT_OF_POSITION_SHARE, A_LITTLE_OVER } as const;

/** Volts that go with a feed (m/min) by the rows of the wire. null where none covers it. */
export function voltsWithFeed(setup: RunSetup, feedMPerMin: number): number | null {
  return rowCurves(setup)?.volts(feedMPerMin) ?? null;
}

/** Volts and tip to work (mm) over feed (m/min) by the rows of the wire; null where class or size is not known. */
export function rowCurves(setup: RunSetup) {
  const query = windowQueryFor(setup);
  return query && { volts: alongRows(query, "volts"), ctwdMm: alongRows(query, "ctwdMm") };
}

/** What the plate asks for, A, out of position by as much less; thicker plate is filled in passes. */
export function plateAmps(setup: RunSetup) {
  if (setup.thicknessMm === null) return null;
  const rule = ampsForThickness(Math.min(setup.thicknessMm, AMPS_RULE_MAX_MM));
  return rule && { ...rule, amps: rule.amps * (isPositionOut(setup) ? OUT_OF_POSITION_SHARE : 1) };
}

/**
 * Whether all metal of the weld is of this run: over others in the same joint its size says nothing of the run. Where nobody
 * said which layer it is, it is taken for the first.
 */
export function isFirstLayer({ passCount }: RunSetup): boolean {
  return (passCount ?? 1) <= 1;
}

/**
 * Leg of one fillet pass at a feed (m/min) and travel (mm/min), mm; null where the joint is none, others lie under the pass, or
 * one is unknown.
 */
export function legAt(
  setup: RunSetup,
  feedMPerMin: number | null,
  travelMmPerMin: number | null,
): Ranged | null {
  const wire = wireOf(setup);
  if (wire === null || feedMPerMin === null || travelMmPerMin === null) return null;
  if (setup.joint === null || !isFillet(setup.joint) || !isFirstLayer(setup)) return null;
  return legForRun({ wire, feedMPerMin, travelMmPerMin });
}

/**
 * Travel, mm/min, that leaves a bead whose face looks so wide (mm, with its expanded uncertainty) at the feed of the set-up, by
 * conservation of metal. From where an equal-leg fillet was photographed is not known: in the plane of a plate its face looks
 * as wide as one leg, seen square to that plate, up to as wide as two, seen square to the face. So the leg lies between half
 * of the width and all of it. Null on other joints, whose width alone says nothing of their metal, where wire or feed is unknown,
 * over other layers,
 * and where the leg asked for takes more than one pass. A check, no reading.
 */
export function travelByFace(
  setup: RunSetup,
  face: { readonly value: number; readonly expandedUncertainty: number },
): Pick<Ranged, "low" | "high"> | null {
  const wire = wireOf(setup);
  if (wire === null || setup.wireFeedMPerMin === null) return null;
  if (setup.joint === null || !isFillet(setup.joint)) return null;
  if (!isFirstLayer(setup) || (legOfPass(setup)?.passes ?? 1) > 1) return null;
  const { value, expandedUncertainty } = face;
  if (expandedUncertainty >= value) return null;
  const slowest = travelForLeg(wire, setup.wireFeedMPerMin, value + expandedUncertainty);
  const fastest = travelForLeg(wire, setup.wireFeedMPerMin, (value - expandedUncertainty) / 2);
  return slowest && fastest && { low: slowest.low, high: fastest.high };
}

/** What one pass carries with this electrode in this position, mm. */
export function onePass({ process, electrodeDiameterMm, position }: RunSetup): PassLimit {
  return onePassLimits({ process, diameterMm: electrodeDiameterMm, position })[0]!;
}

/** The leg of one pass towards the leg asked for, mm, and how many passes that takes. null: no fillet, or no leg asked for. */
export function legOfPass(setup: RunSetup): { readonly legMm: number; readonly passes: number } | null {
  const { targetLegMm: wanted, joint } = setup;
  if (wanted === null || joint === null || !isFillet(joint)) return null;
  const { mm } = onePass(setup);
  const passes = wanted <= A_LITTLE_OVER * mm ? 1 : passesForLeg(wanted, mm);
  return { legMm: wanted / Math.sqrt(passes), passes };
}
