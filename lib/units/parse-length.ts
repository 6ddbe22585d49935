import type { Result } from "@/lib/base";
import { refuse, type ParseOptions, type UnitsIssue } from "./issue";
import type { LengthUnit } from "./preferences";
import { isFraction } from "./read-number";
import { checkBounds, readQuantity, splitQuantity, type QuantityKind } from "./read-quantity";
import { lengthNames, MM_PER_FOOT, MM_PER_INCH } from "./tables/factors";
import { stainlessGauges, steelGauges, type GaugeMetal } from "./tables/gauges";
import { tidy } from "./tidy";

export interface ParseLengthOptions extends ParseOptions {
  /** Unit of a bare decimal. A bare fraction is always inches: nobody writes millimetres in eighths (common practice). */
  readonly default: LengthUnit;
  /** Which gauge table "16 ga" means. Default: carbon steel. */
  readonly gaugeMetal?: GaugeMetal;
}

/** 20 m: longer than any weld a person marks on one photo. */
const kind: QuantityKind = {
  unit: "mm",
  factorOf: (name) => (Object.hasOwn(lengthNames, name) ? lengthNames[name] : undefined),
  max: 20_000,
  example: "3.2 mm, 1/8 in or 16 ga",
};
const GAUGE = /^ga(?:uge|ge)?$/;
const FEET_AND_INCHES = /^(\d+) ?(?:ft|feet|foot|')\.? ?(\d.*)$/;

/** Thickness of a sheet gauge, mm, or null when the table has no such number. */
export function gaugeMm(number: number, metal: GaugeMetal = "steel"): number | null {
  const { gauges } = metal === "steel" ? steelGauges : stainlessGauges;
  const found = gauges.find((gauge) => gauge.number === number);
  return found ? found.inches * MM_PER_INCH : null;
}

/**
 * A length as a welder writes it, in mm: "3.2", "3,2", "1/8", "1 1/8 in", "1-1/8\"", ".035 in", "16 ga", "2 cm",
 * "1 ft 2 in". Expected failures: every code of `unitsIssueCodes` but the clock's.
 */
export function parseLength(typed: string, options: ParseLengthOptions): Result<number, UnitsIssue> {
  const text = tidy(typed);
  const parts = splitQuantity(text);
  if (parts && !parts.negative && GAUGE.test(parts.unit)) return parseGauge(typed, parts.number, options);
  const feet = FEET_AND_INCHES.exec(text);
  if (feet) return parseFeetAndInches(typed, Number(feet[1]), feet[2] ?? "", options);
  const bareUnit = parts && isFraction(parts.number) ? "in" : options.default;
  return readQuantity(typed, kind, bareUnit, options);
}

function parseGauge(typed: string, number: string, options: ParseLengthOptions): Result<number, UnitsIssue> {
  const metal = options.gaugeMetal ?? "steel";
  const mm = /^\d{1,2}$/.test(number) ? gaugeMm(Number(number), metal) : null;
  if (mm !== null) return checkBounds(mm, kind, typed, options);
  const { gauges } = metal === "steel" ? steelGauges : stainlessGauges;
  const numbers = gauges.map((gauge) => gauge.number);
  return refuse("gauge-unknown", typed, options, {
    example: kind.example,
    first: Math.min(...numbers),
    last: Math.max(...numbers),
  });
}

/** "1 ft 2 in": the second part is inches and less than a foot, otherwise it was a slip. */
function parseFeetAndInches(
  typed: string,
  feet: number,
  rest: string,
  options: ParseLengthOptions,
): Result<number, UnitsIssue> {
  const inches = readQuantity(rest, kind, "in", { allowZero: true });
  const restUnit = splitQuantity(rest)?.unit ?? "";
  const isInches = restUnit === "" || lengthNames[restUnit] === MM_PER_INCH;
  if (!inches.ok || !isInches || inches.value >= MM_PER_FOOT) {
    return refuse("number-not-understood", typed, options, { example: "1 ft 2 in" });
  }
  return checkBounds(feet * MM_PER_FOOT + inches.value, kind, typed, options);
}
