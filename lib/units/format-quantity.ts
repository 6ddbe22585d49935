import { invariant } from "@/lib/base";
import { printedUncertainty, visibleDecimals } from "./decimals";
import type { LengthSystem } from "./preferences";
import { rounding, type Printed, type PrintedQuantity } from "./tables/rounding";

/**
 * A quantity for a person, rounded and named as the rounding table has it: "1.25 kJ/mm", "65 ± 5 mm²", "−0.8 mm".
 * `value` and `uncertainty` (expanded, absolute; 0 prints none) are in the table's stored unit. With an uncertainty the
 * value ends at its last printed place. A value that is not nought never reads 0.
 */
export function formatQuantity(
  quantity: PrintedQuantity,
  value: number,
  system: LengthSystem,
  uncertainty = 0,
): string {
  invariant(Number.isFinite(value), `a quantity to print is finite, got ${value}`);
  const printed: Printed = rounding[quantity][system];
  const own = value / printed.per + (printed.plus ?? 0);
  const sign = own < 0 ? "−" : "";
  if (!(uncertainty > 0)) {
    const size = Math.abs(own);
    const text = printed.keepsNoughts ? size.toFixed(printed.places) : visibleDecimals(size, printed.places);
    return `${text === "0" || text.startsWith("under") ? "" : sign}${text}${printed.suffix}`;
  }
  const spread = printedUncertainty(uncertainty / printed.per);
  const middle = Math.abs(own).toFixed(spread.places);
  return `${Number(middle) === 0 ? "" : sign}${middle} ± ${spread.value.toFixed(spread.places)}${printed.suffix}`;
}

/**
 * To so many figures that count: how large something small is, where the table's places would round it to nought:
 * "0.031 mm".
 */
export function formatFigures(
  quantity: PrintedQuantity,
  value: number,
  system: LengthSystem,
  figures: 2 | 3,
): string {
  const { per, suffix }: Printed = rounding[quantity][system];
  return `${Number((value / per).toPrecision(figures))}${suffix}`.replace("-", "−");
}

/** A value in the unit it is printed in, for axes and tables that name the unit once: to the table's places. */
export function bareQuantity(quantity: PrintedQuantity, value: number, system: LengthSystem): string {
  const { suffix }: Printed = rounding[quantity][system];
  return formatQuantity(quantity, value, system).slice(0, -suffix.length || undefined);
}
