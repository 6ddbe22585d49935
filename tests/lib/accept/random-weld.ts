import { listCriteria, weldKinds, type CriteriaSummary, type JudgeInput } from "@/lib/accept";
import { type Observation } from "@/lib/accept/types";
import { JudgeInputSchema } from "@/lib/accept";
import { flatThroat, type Quantity } from "@/lib/measure";
import { toeToToe } from "@/lib/measure/fillet-section";
import { imperfectionIds, places } from "@/lib/trade";

/** Small, quick and the same everywhere (mulberry32, public domain): twenty thousand welds must cost seconds. */
export function dice(seed: number) {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  return {
    next,
    between: (low: number, high: number): number => low + (high - low) * next(),
    maybe: (chance: number): boolean => next() < chance,
    oneOf: <T>(list: readonly T[]): T => list[Math.floor(next() * list.length)]!,
  };
}
/** In another order (Fisher and Yates). */
export function shuffled<T>(roll: Dice, list: readonly T[]): T[] {
  const all = [...list];
  for (let i = all.length - 1; i > 0; i--) {
    const j = Math.floor(roll.next() * (i + 1));
    [all[i], all[j]] = [all[j]!, all[i]!];
  }
  return all;
}
export type Dice = ReturnType<typeof dice>;

export const sets = listCriteria();

/** Numbers as people write them: halves and tenths, so that limits are often met exactly. */
const rounded = (value: number, step: number): number => Number((Math.round(value / step) * step).toFixed(6));

function reading(roll: Dice, value: number, source?: Quantity["source"]): Quantity {
  const from = source ?? roll.oneOf(["gauge", "gauge", "photo"] as const);
  const U = roll.maybe(0.3) ? 0 : rounded(roll.between(0, 0.3), 0.01);
  return { unit: "mm", value, expandedUncertainty: U, source: from, budget: [] };
}

/**
 * Any weld by any set: mostly sound, with everything known of it that can be known. Legs, throat, convexity and width
 * are those of one cross section; nothing else is kept from being odd.
 */
export function randomWeld(roll: Dice, set: CriteriaSummary = roll.oneOf(sets)): JudgeInput {
  const kind = roll.maybe(0.9) ? roll.oneOf(set.weldKinds) : roll.oneOf(weldKinds);
  const thickness = rounded(
    roll.oneOf([roll.between(0.6, 4), roll.between(3, 12), roll.between(10, 60)]),
    0.1,
  );
  const leg = rounded(roll.between(2, 12), 0.5);
  const length = rounded(
    roll.oneOf([roll.between(20, 100), roll.between(80, 400), roll.between(300, 2000)]),
    1,
  );
  const seen = Array.from({ length: roll.oneOf([0, 0, 1, 1, 2, 3]) }, (_, index) =>
    randomObservation(roll, `o${index}`, length, set),
  );
  const marked = new Set(seen.map(({ imperfection }) => imperfection));
  return JudgeInputSchema.parse({
    criteriaId: set.id,
    settings: Object.fromEntries(
      set.settings.flatMap(({ id, choices }) => (roll.maybe(0.7) ? [[id, roll.oneOf(choices).value]] : [])),
    ),
    weld: {
      kind,
      thicknessMm: thickness,
      legMm: leg,
      lengthMm: length,
      rootWidthMm: rounded(roll.between(2, 10), 0.5),
      closed: roll.maybe(0.1),
      alongLapEdge: roll.maybe(0.1),
      singleSided: roll.maybe(0.5),
      transverseToTension: roll.maybe(0.2),
      stiffenerToWeb: roll.maybe(0.2),
      completePenetration: roll.maybe(0.5),
      seam: roll.oneOf(["plate", "longitudinal", "girth", "branch"] as const),
    },
    observations: seen,
    beadReadings: randomReadings(roll, leg, thickness),
    lookedFor: imperfectionIds.filter((id) => !marked.has(id)),
  });
}

function randomReadings(roll: Dice, leg: number, thickness: number): JudgeInput["beadReadings"] {
  const z1 = leg * roll.oneOf([1, 1.02, roll.between(0.7, 1.4)]);
  const z2 = leg * roll.oneOf([1, 1.02, roll.between(0.7, 1.4)]);
  const convexity = roll.oneOf([0, 0.4, roll.between(-1, 2.5)]);
  const read = (value: number): Quantity => reading(roll, rounded(value, 0.1), "gauge");
  const slip = (chance: number): number => (roll.maybe(chance) ? roll.between(0.5, 2.5) : 0);
  return {
    leg1: read(z1),
    leg2: read(z2),
    // Now and then somebody misreads the gauge.
    throat: read(Math.max(0, flatThroat(z1, z2) + convexity + slip(0.08))),
    convexity: read(convexity),
    width: reading(roll, rounded(toeToToe(z1, z2), 0.1)),
    reinforcement: read(roll.oneOf([1, roll.between(0, 6)])),
    toeAngle: { ...read(roll.oneOf([155, 120, roll.between(85, 175)])), unit: "deg" },
    misalignment: read(roll.oneOf([0, roll.between(0, thickness / 3)])),
    rootGap: read(roll.oneOf([0, roll.between(0, 3)])),
  };
}

const small = [0.1, 0.25, 0.4, 0.5, 0.8, 1, 2] as const;

export function randomObservation(roll: Dice, id: string, weldMm: number, set: CriteriaSummary): Observation {
  const imperfection = roll.oneOf(
    roll.maybe(0.85) && set.imperfections.length > 0 ? set.imperfections : imperfectionIds,
  );
  const length = rounded(roll.oneOf([roll.between(0.5, 5), roll.between(5, 60)]), 0.5);
  const from = rounded(roll.between(0, Math.max(1, weldMm - length)), 0.5);
  const size = (): Quantity => reading(roll, roll.oneOf([...small, rounded(roll.between(0, 4), 0.1)]));
  return JudgeInputSchema.shape.observations.unwrap().element.parse({
    id,
    imperfection,
    place: roll.maybe(0.7) ? roll.oneOf(places) : null,
    patterns:
      imperfection === "surface-porosity" && roll.maybe(0.2)
        ? [roll.oneOf(["clustered", "in-line"] as const)]
        : [],
    poreCount: null,
    aboutCount: null,
    alongMm: [from, rounded(from + length, 0.5)],
    lengthMm: reading(roll, length),
    depthMm: size(),
    heightMm: size(),
    diameterMm: size(),
  });
}
