import type { LimitRange } from "@/lib/accept";
import type { Quantity } from "@/lib/measure";
import type { BothUnits, LimitSymbol, LinearLimit, SectionLimit } from "./criteria";
import type { SectionGiven } from "./judgement";

/** A limit as far as it is known, and what is missing to know it better. */
export interface KnownLimit {
  readonly range: LimitRange;
  readonly missing: readonly LimitSymbol[];
}

const inUnits = (value: number | BothUnits, units: SectionGiven["units"]): number =>
  typeof value === "number" ? value : value[units];

/**
 * What the limit may be: between `low` and `high` while a symbol in it is not known, or while the width of the face does
 * not settle its band.
 */
export function limitRange(limit: SectionLimit, given: SectionGiven, faceWidth: Quantity | null): KnownLimit {
  if (!("bands" in limit)) return linearRange(limit, given, faceWidth);
  const { units } = given;
  const u = faceWidth?.expandedUncertainty ?? 0;
  const bands = limit.bands.filter(({ upTo }, i) => {
    if (faceWidth === null) return true;
    const from = i === 0 ? -Infinity : inUnits(limit.bands[i - 1]!.upTo ?? 0, units);
    return faceWidth.value + u > from && (upTo === null || faceWidth.value - u <= inUnits(upTo, units));
  });
  const ranges = bands.map((band) => linearRange(band.limit, given, faceWidth));
  return {
    range: {
      low: Math.min(...ranges.map(({ range }) => range.low)),
      high: Math.max(...ranges.map(({ range }) => range.high)),
      spread: 0,
      unknown: [],
    },
    missing: [
      ...(faceWidth === null ? ["face-width" as const] : []),
      ...ranges.flatMap(({ missing }) => missing),
    ],
  };
}

function linearRange(
  { plus, times, of, cap }: LinearLimit,
  given: SectionGiven,
  faceWidth: Quantity | null,
): KnownLimit {
  const base = inUnits(plus, given.units);
  const most = cap === null ? Infinity : inUnits(cap, given.units);
  const held = (value: number): number => Math.min(most, value);
  if (of === null || times === 0)
    return { range: { low: held(base), high: held(base), spread: 0, unknown: [] }, missing: [] };
  const known = symbolValue(of, given, faceWidth);
  if (known === null)
    return { range: { low: held(base), high: most, spread: 0, unknown: [] }, missing: [of] };
  const at = (by: number): number => held(base + times * (known.value + by));
  const spread = (at(known.spread) - at(-known.spread)) / 2;
  return { range: { low: at(0), high: at(0), spread, unknown: [] }, missing: [] };
}

function symbolValue(
  of: LimitSymbol,
  given: SectionGiven,
  faceWidth: Quantity | null,
): { readonly value: number; readonly spread: number } | null {
  const stated = (value: number | null) => (value === null ? null : { value, spread: 0 });
  switch (of) {
    case "specified-leg":
      return stated(given.specifiedLegMm);
    case "specified-throat":
      return stated(given.specifiedThroatMm);
    case "plate-thickness":
      return stated(given.plateThicknessMm);
    case "face-width":
      return faceWidth && { value: faceWidth.value, spread: faceWidth.expandedUncertainty };
  }
}
