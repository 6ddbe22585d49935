import { invariant } from "@/lib/base";
import { decimals } from "./decimals";
import { formatQuantity } from "./format-quantity";
import { inchFraction, inchFractionWithUncertainty, SIXTY_FOURTHS } from "./fraction";
import { wireSize } from "./parse-wire-diameter";
import type { LengthSystem } from "./preferences";
import { MM_PER_INCH } from "./tables/factors";
import { stainlessGauges, steelGauges, type GaugeMetal } from "./tables/gauges";

export interface LengthFormat {
  readonly system: LengthSystem;
  /** Only for inches; default "decimal". */
  readonly style?: "decimal" | "fraction";
  /** Expanded uncertainty of the value, mm; 0 or left out prints none. */
  readonly uncertaintyMm?: number;
}

/**
 * A length for a person: "3.2 mm", "0.126 in", "1/8 in", "3.2 ± 0.3 mm", "1/8 ± 1/64 in". Not negative.
 * Rounding without uncertainty: as the rounding table has it, or to the nearest 1/64 in. With uncertainty, the value is rounded
 * to the last place of the printed uncertainty. A positive length never reads 0.
 */
export function formatLength(mm: number, format: LengthFormat): string {
  invariant(Number.isFinite(mm) && mm >= 0, `a length to print is finite and not negative, got ${mm}`);
  const { system, style = "decimal", uncertaintyMm = 0 } = format;
  const isInch = system === "inch";
  if (isInch && style === "fraction") {
    const [value, spread] = [mm / MM_PER_INCH, uncertaintyMm / MM_PER_INCH];
    const text = spread > 0 ? inchFractionWithUncertainty(value, spread) : inchFraction(value);
    if (text !== null) return `${text} in`;
  }
  return formatQuantity("length", mm, system, uncertaintyMm);
}

/** A wire or rod by its name in the trade: "1.2 mm", ".045 in", "3/32 in". Unlisted sizes are converted. */
export function formatWireDiameter(mm: number, system: LengthSystem): string {
  const size = wireSize(mm);
  if (size === null) return formatLength(mm, { system });
  return system === "metric" ? `${decimals(size.mm, 2)} mm` : `${size.inchName} in`;
}

/** Half a thousandth of an inch: gauge tables print four places, people read three. */
const GAUGE_TOLERANCE_MM = 0.0005 * MM_PER_INCH;

/** Plate and sheet: a fraction where it is one, a gauge where it is one ("16 ga (0.06 in)"), decimals otherwise. */
export function formatThickness(mm: number, system: LengthSystem, metal: GaugeMetal = "steel"): string {
  if (system === "metric") return formatLength(mm, { system });
  const sixtyFourths = (mm / MM_PER_INCH) * SIXTY_FOURTHS;
  const decimal = formatLength(mm, { system });
  if (sixtyFourths >= 0.5 && Math.abs(sixtyFourths - Math.round(sixtyFourths)) < 1e-6) {
    return formatLength(mm, { system, style: "fraction" });
  }
  const { gauges } = metal === "steel" ? steelGauges : stainlessGauges;
  const gauge = gauges.find(({ inches }) => Math.abs(inches * MM_PER_INCH - mm) <= GAUGE_TOLERANCE_MM);
  return gauge ? `${gauge.number} ga (${decimal})` : decimal;
}
