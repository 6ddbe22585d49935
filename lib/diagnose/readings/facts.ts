import { fieldInText, isPositionOut, type RunSetup, type SetupFact, type SetupField } from "@/lib/setup";
import type { CauseId } from "../cause-ids";
import type { Odds, Reader, Reading } from "../reading";
import { type FactWeight, factWeights, RECORDED } from "../tables/fact-weights";
import type { Amount, UnitKind } from "../types";
import { fact } from "./fact";

/** An in-order fact this clear says that its cause is not at work: nothing is proposed against it. */
const CLEARED = 0.1;

/** Whether the fact is a contradiction of the record: a fault that lib/setup warns of, and that the table names. */
export function contradicts({ code, severity }: SetupFact): boolean {
  return severity !== null && severity !== "note" && factWeights[code]?.contradiction !== undefined;
}

/** The cause that a contradiction of the record shows to be at work; null where it is none, or names no cause. */
export function recordedCause(one: SetupFact): CauseId | null {
  const { recorded = null, recordedWhen: when } = factWeights[one.code] ?? {};
  if (!contradicts(one)) return null;
  return when !== undefined && one.data[when.key] === when.is ? when.cause : recorded;
}

export function oddsOfFact(one: SetupFact): Odds {
  const weight = factWeights[one.code];
  if (weight === undefined) return {};
  const recorded = recordedCause(one);
  if (recorded !== null) return { [recorded]: RECORDED };
  switch (one.state) {
    case "in-order":
      return weight.inOrder ?? {};
    case "unusual":
      return weight.unusual ?? {};
    case "fault":
      return faultOdds(one, weight);
  }
}

function faultOdds({ data, fields }: SetupFact, { fault = {}, degrees, atField }: FactWeight): Odds {
  const reached = degrees?.steps.filter(([from]) => Number(data[degrees.key]) >= from).at(-1)?.[1] ?? fault;
  return { ...reached, ...(atField?.field === fields[0] ? atField.odds : {}) };
}

/** Causes that the record shows not to be at work. */
export function clearedIn(facts: readonly SetupFact[]): readonly CauseId[] {
  return facts
    .filter(({ state }) => state === "in-order")
    .flatMap((one) => Object.entries(oddsOfFact(one)))
    .filter(([, factor]) => factor <= CLEARED)
    .map(([cause]) => cause as CauseId);
}

/** A reading that is too low by its own window, its feed or its plate. */
export const readsLow = (facts: readonly SetupFact[]): boolean =>
  facts.some(
    ({ code, severity }) =>
      severity !== null &&
      (code === "reading-below-window" || code === "reading-low-for-feed" || code === "current-below-plate"),
  );

/**
 * Causes whose cure the record forbids: more current where the plate has too much, less where it has too little. A hanging
 * pool wants less all the same, and a current out of the wire's own window goes back in first.
 */
export function forbiddenIn(setup: RunSetup, facts: readonly SetupFact[]): readonly CauseId[] {
  const out = (side: string) =>
    facts.some(
      ({ code, severity, data }) =>
        severity !== null &&
        code === `reading-${side}-window` &&
        (data["field"] === "wireFeedMPerMin" || data["field"] === "amps"),
    );
  const asked: readonly CauseId[] = [
    ...(isPositionOut(setup) || out("above") ? (["wfs-high"] as const) : []),
    ...(out("below") ? (["wfs-low"] as const) : []),
  ];
  return facts
    .filter(({ severity }) => severity !== null)
    .flatMap(({ code }) => factWeights[code]?.forbids ?? [])
    .filter((cause) => !asked.includes(cause));
}

/** What the judged facts of the set-up say about causes, one reading each. */
export const factReadings: Reader = ({ facts }) => {
  const recorded = facts.flatMap((one) => recordedCause(one) ?? []);
  return facts.flatMap((one): readonly Reading[] => {
    // What is in order by one rule clears nothing that another found wrong: the gas of a class that cannot spray.
    const odds = one.state === "in-order" ? without(oddsOfFact(one), recorded) : oddsOfFact(one);
    const weight = factWeights[one.code];
    if (weight === undefined || Object.keys(odds).length === 0) return [];
    return [
      fact({
        key: `${one.code}:${one.fields[0]}`,
        odds,
        source: one.source,
        forText: weight.forText ?? weight.contradiction ?? "",
        againstText: weight.againstText ?? weight.forText ?? "",
        amounts: amountsOf(one),
      }),
    ];
  });
};

const without = (odds: Odds, causes: readonly CauseId[]): Odds =>
  Object.fromEntries(Object.entries(odds).filter(([cause]) => !causes.includes(cause as CauseId)));

const unitOf: Partial<Readonly<Record<SetupField, UnitKind>>> = {
  wireFeedMPerMin: "wire-feed",
  volts: "voltage",
  amps: "current",
  ctwdMm: "small-length",
  thicknessMm: "small-length",
  fitUpGapMm: "small-length",
  electrodeDiameterMm: "small-length",
  travelSpeedMmPerMin: "travel-speed",
  workAngleDeg: "angle",
  passCount: "count",
};

const named: readonly (readonly [key: string, name: string])[] = [
  ["value", ""],
  ["limit", "up to about"],
  ["wanted", "wanted about"],
  ["cap", "input gives out at about"],
  ["computed", "computed"],
  ["timed", "by length and time"],
];

/** The numbers of a fact, in the unit of the field it stands at. */
export function amountsOf({ fields, data }: SetupFact): readonly Amount[] {
  const [field] = fields;
  const unitKind = unitOf[field];
  if (unitKind === undefined) return [];
  return named.flatMap(([key, name]) => {
    const valueSi = data[key];
    if (typeof valueSi !== "number") return [];
    const relativeError = key === "computed" ? Number(data["error"]) : null;
    return [{ quantity: name === "" ? fieldInText(field) : name, valueSi, unitKind, relativeError }];
  });
}
