import type { JudgeInput } from "@/lib/accept";
import type { Observation } from "@/lib/accept/types";
import { flatThroat, type Quantity } from "@/lib/measure";
import { randomObservation, sets, type Dice } from "./random-weld";

export interface Changed {
  readonly weld: JudgeInput;
  readonly what: string;
}

/** Facts of the weld whose "not given" means "not known". The others have a value they are taken as. */
const factNames = [
  "thicknessMm",
  "lengthMm",
  "legMm",
  "rootWidthMm",
  "alongLapEdge",
  "singleSided",
  "transverseToTension",
  "stiffenerToWeb",
  "completePenetration",
  "seam",
] as const;
const sizeNames = ["lengthMm", "depthMm", "heightMm", "diameterMm", "alongMm", "poreCount"] as const;

/**
 * The same weld with one to six readings, sizes, places, facts or looks taken away; every second time first of all one
 * of `sore`, figures that a clause stands or falls with ("throat", "o1.depth").
 */
export function lessKnown(roll: Dice, weld: JudgeInput, sore: readonly string[] = []): Changed | null {
  let now = weld;
  const what: string[] = [];
  if (sore.length > 0 && roll.maybe(0.5)) {
    const figure = roll.oneOf(sore);
    now = withoutFigure(now, figure);
    what.push(figure);
  }
  for (let left = roll.oneOf([1, 1, 2, 3, 6]); left > 0; left--) {
    const one = withoutOne(roll, now);
    if (one === null) continue;
    now = one.weld;
    what.push(one.what);
  }
  return what.length === 0 ? null : { weld: now, what: what.join(", ") };
}

function withoutFigure(weld: JudgeInput, figure: string): JudgeInput {
  const [id, size] = figure.split(".");
  if (size === undefined && figure in weld.beadReadings)
    return { ...weld, beadReadings: { ...weld.beadReadings, [figure]: null } };
  if (size === undefined) return { ...weld, weld: { ...weld.weld, [figure]: null } };
  const name = size === "poreCount" ? size : `${size}Mm`;
  return {
    ...weld,
    observations: weld.observations.map((one) => (one.id === id ? { ...one, [name]: null } : one)),
  };
}

function withoutOne(roll: Dice, weld: JudgeInput): Changed | null {
  switch (roll.oneOf(["reading", "reading", "size", "size", "fact", "look"] as const)) {
    case "reading": {
      const given = Object.entries(weld.beadReadings).flatMap(([name, read]) =>
        read === null ? [] : [name],
      );
      if (given.length === 0) return null;
      const name = roll.oneOf(given);
      return { weld: { ...weld, beadReadings: { ...weld.beadReadings, [name]: null } }, what: name };
    }
    case "size": {
      if (weld.observations.length === 0) return null;
      const id = roll.oneOf(weld.observations).id;
      const name = roll.oneOf(sizeNames);
      const observations = weld.observations.map((one) => (one.id === id ? { ...one, [name]: null } : one));
      return { weld: { ...weld, observations }, what: `${id}.${name}` };
    }
    case "fact": {
      const name = roll.oneOf(factNames);
      return { weld: { ...weld, weld: { ...weld.weld, [name]: null } }, what: name };
    }
    case "look": {
      const id = roll.oneOf(weld.lookedFor);
      return {
        weld: { ...weld, lookedFor: weld.lookedFor.filter((one) => one !== id) },
        what: `look for ${id}`,
      };
    }
  }
}

const grown = (size: Quantity | null, by: number): Quantity | null =>
  size === null ? null : { ...size, value: size.value * by + 0.01 };

/** The same weld made worse: an imperfection larger, one more, or a thinner throat. */
export function worseThan(roll: Dice, weld: JudgeInput): Changed {
  const by = roll.between(1, 3);
  switch (roll.oneOf(["larger", "more", "thinner"] as const)) {
    case "larger": {
      if (weld.observations.length === 0) return oneMore(roll, weld);
      const id = roll.oneOf(weld.observations).id;
      const observations = weld.observations.map((one) => (one.id === id ? larger(one, by) : one));
      return { weld: { ...weld, observations }, what: `${id} larger` };
    }
    case "more":
      return oneMore(roll, weld);
    case "thinner": {
      const { throat, convexity, leg1, leg2 } = weld.beadReadings;
      if (throat === null || leg1 === null || leg2 === null) return oneMore(roll, weld);
      const less = roll.between(0, throat.value / 2);
      // The face sinks with the throat; a full face is no worse for losing its crown, a hollow one is.
      const flat = flatThroat(leg1.value, leg2.value, weld.weld.plateAngleDeg);
      if (throat.value > flat) return oneMore(roll, weld);
      const beadReadings = {
        ...weld.beadReadings,
        throat: { ...throat, value: throat.value - less },
        convexity: convexity === null ? null : { ...convexity, value: convexity.value - less },
      };
      return { weld: { ...weld, beadReadings }, what: "a thinner throat" };
    }
  }
}

/** About its middle, so that it stays in whatever stretch it was counted in. */
function larger(one: Observation, by: number): Observation {
  const { alongMm } = one;
  const middle = alongMm === null ? 0 : (alongMm[0] + alongMm[1]) / 2;
  return {
    ...one,
    alongMm: alongMm && [middle + (alongMm[0] - middle) * by, middle + (alongMm[1] - middle) * by],
    lengthMm: grown(one.lengthMm, by),
    depthMm: grown(one.depthMm, by),
    heightMm: grown(one.heightMm, by),
    diameterMm: grown(one.diameterMm, by),
  };
}

function oneMore(roll: Dice, weld: JudgeInput): Changed {
  const set = sets.find(({ id }) => id === weld.criteriaId)!;
  const one = randomObservation(roll, "more", weld.weld.lengthMm ?? 300, set);
  const lookedFor = weld.lookedFor.filter((id) => id !== one.imperfection);
  return {
    weld: { ...weld, lookedFor, observations: [...weld.observations, one] },
    what: `one more ${one.imperfection}`,
  };
}

/** Every length once through inches and back: off by rounding and nothing else. */
export function inInches(weld: JudgeInput): JudgeInput {
  const there = (value: number): number => (value / 25.4) * 25.4;
  const walk = (value: unknown): unknown => {
    if (typeof value === "number") return there(value);
    if (Array.isArray(value)) return value.map(walk);
    if (value === null || typeof value !== "object") return value;
    return Object.fromEntries(
      Object.entries(value).map(([key, inner]) => [
        key,
        key === "plateAngleDeg" || key === "poreCount" ? inner : walk(inner),
      ]),
    );
  };
  return {
    ...weld,
    weld: walk(weld.weld) as JudgeInput["weld"],
    observations: walk(weld.observations) as JudgeInput["observations"],
    beadReadings: walk(weld.beadReadings) as JudgeInput["beadReadings"],
  };
}
