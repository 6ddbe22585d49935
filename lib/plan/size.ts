import {
  filletAreaMm2,
  passesForLeg,
  ranged,
  travelForArea,
  travelForLeg,
  type Ranged,
  type Wire,
} from "@/lib/arc";
import { clamp } from "@/lib/numeric";
import { HAND_TRAVEL, isPositionOut, legOfPass, onePass, wireOf, type RunSetup } from "@/lib/setup";
import { isFillet } from "@/lib/trade";
import type { PlanAsk } from "./ask";
import { grooveShape, travelShares } from "./tables/figures";

/** What is to be filled with metal, and how. */
export interface Size {
  readonly kind: "fillet" | "surface" | "groove";
  /** As many passes as a pass's size asks for; the slowest hand may ask for more. */
  readonly leastPasses: number;
  /** Travel, mm/min, that leaves the size in so many passes at a feed (m/min). */
  readonly travel: (feedMPerMin: number, passes: number) => Ranged;
  /** Leg aimed at, mm; whether it was asked for or is the usual one for the plate. */
  readonly leg: { readonly mm: number; readonly asked: boolean } | null;
  readonly groove: Groove | null;
}

export interface Groove {
  readonly includedDeg: number;
  readonly rootMm: number;
  readonly areaMm2: Ranged;
}

/** The slowest and fastest a hand is asked to go in this position, mm/min. */
export function handLimits(setup: RunSetup): { readonly slow: number; readonly fast: number } {
  const share = isPositionOut(setup) ? travelShares.slowOut : travelShares.slowLevel;
  return { slow: share * HAND_TRAVEL.low, fast: travelShares.fast * HAND_TRAVEL.high };
}

/** The leg that is usual where none is asked for: the thinner plate's thickness, as far as one pass carries it. */
export function usualLegMm(setup: RunSetup): number {
  return Math.min(setup.thicknessMm!, onePass(setup).mm);
}

export function sizeOf(setup: RunSetup, ask: PlanAsk): Size {
  const wire = wireOf(setup)!;
  if (isFillet(setup.joint!)) return filletSize(setup, wire);
  return setup.joint!.endsWith("backed") ? grooveSize(setup, ask, wire) : surfaceSize();
}

function filletSize(setup: RunSetup, wire: Wire): Size {
  const mm = setup.targetLegMm ?? usualLegMm(setup);
  const { passes } = legOfPass({ ...setup, targetLegMm: mm })!;
  return {
    kind: "fillet",
    leastPasses: passes,
    travel: (feed, n) => travelForLeg(wire, feed, mm / Math.sqrt(n))!,
    leg: { mm, asked: setup.targetLegMm !== null },
    groove: null,
  };
}

/** A bead laid on a surface has no size of its own: the hand goes at its usual pace. */
function surfaceSize(): Size {
  const middle = (HAND_TRAVEL.low + HAND_TRAVEL.high) / 2;
  const spread = HAND_TRAVEL.high / middle - 1;
  return {
    kind: "surface",
    leastPasses: 1,
    travel: () => ranged(middle, spread),
    leg: null,
    groove: null,
  };
}

function grooveSize(setup: RunSetup, ask: PlanAsk, wire: Wire): Size {
  const groove = grooveOf(setup, ask);
  const { value, relativeError } = groove.areaMm2;
  const most = onePass(setup).mm;
  // As many as fillets of the largest pass would need for the same metal.
  const leastPasses = passesForLeg(Math.sqrt(value / filletAreaMm2(1).value), most);
  return {
    kind: "groove",
    leastPasses,
    travel: (feed, n) => {
      const travel = travelForArea(wire, feed, value / n)!;
      return ranged(travel.value, Math.hypot(travel.relativeError, relativeError));
    },
    leg: null,
    groove,
  };
}

/** The section to be filled: root opening, two slopes and a low cap. A square butt has no slopes. */
function grooveOf(setup: RunSetup, ask: PlanAsk): Groove {
  const thick = setup.thicknessMm!;
  const square = setup.joint === "butt-backed";
  const includedDeg = square ? 0 : (ask.grooveAngleDeg ?? grooveShape.includedDeg);
  const rootMm =
    setup.fitUpGapMm ??
    (square ? clamp(thick, grooveShape.leastRootMm, grooveShape.rootMm) : grooveShape.rootMm);
  const slope = Math.tan((includedDeg * Math.PI) / 360);
  const face = rootMm + 2 * thick * slope;
  const area = rootMm * thick + thick ** 2 * slope + (2 / 3) * face * grooveShape.capMm;
  return { includedDeg, rootMm, areaMm2: ranged(area, grooveShape.relativeError) };
}
