import type { Source } from "@/lib/base";
import { remark } from "@/lib/trade";
import type { BurnOff } from "./burn-off";
import { burnOffRows, scaledError, type WireKind } from "./tables/burn-off-rows";

export interface BurnOffModel extends BurnOff {
  readonly relativeError: number;
  /** Current range of the data behind it, A. */
  readonly range: readonly [low: number, high: number];
  readonly source: Source;
}

/** Nominal sizes are rounded: .045 in is 1.143 mm and sold as 1.1 or 1.2. */
const SIZE_TOLERANCE_MM = 0.03;

/**
 * The burn-off coefficients for a wire, with the error of the current they predict. Solid wire of a size without a row
 * is scaled from 1.2 mm; a cored wire without a row gives null: no number is better than a wrong one.
 */
export function burnOffFor(kind: WireKind, diameterMm: number): BurnOffModel | null {
  const row = burnOffRows.find(
    (r) => r.kind === kind && r.diametersMm.some((d) => Math.abs(d - diameterMm) <= SIZE_TOLERANCE_MM),
  );
  if (row) return row;
  const solid = burnOffRows.find((r) => r.id === "solid-1.2");
  if (kind !== "solid" || !solid || !(diameterMm >= 0.6 && diameterMm <= 1.6)) return null;
  const ratio = 1.2 / diameterMm;
  return {
    a: solid.a * ratio ** 2,
    b: solid.b * ratio ** 4,
    relativeError: scaledError,
    range: [solid.range[0] / ratio ** 2, solid.range[1] / ratio ** 2],
    source: remark(solid.source, "scaled to this size: a with 1/d², b with 1/d⁴", "memory"),
  };
}
