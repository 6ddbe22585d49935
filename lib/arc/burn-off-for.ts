import type { Source } from "@/lib/base";
import { remark, trueWireSize } from "@/lib/trade";
import type { BurnOff } from "./burn-off";
import { burnOffRows, scaled, type BurnOffRow, type WireKind } from "./tables/burn-off-rows";

export interface BurnOffModel extends BurnOff {
  readonly relativeError: number;
  /** Current range of the data behind it, A. */
  readonly range: readonly [low: number, high: number];
  readonly source: Source;
}

/** Self-shielded carbon steel wire is drawn to inch sizes only: common practice, no source. */
export const inchOnly = (kind: WireKind): boolean => kind === "self-shielded";

/**
 * The burn-off coefficients for a wire, by its stored diameter, mm, with the error of the current they predict. The
 * nearest row of its kind, scaled to the true diameter; the error says what the scaling and the name of the size leave
 * open. null where the nearest row is too far away: no number is better than a wrong one.
 */
export function burnOffFor(kind: WireKind, diameterMm: number): BurnOffModel | null {
  const { diameterMm: trueMm, areaRelativeError } = trueWireSize(diameterMm, inchOnly(kind));
  const far = (row: BurnOffRow) => Math.abs(Math.log(trueMm / row.wireMm));
  const [row] = burnOffRows.filter((one) => one.kind === kind).sort((x, y) => far(x) - far(y));
  if (row === undefined || !(trueMm > 0)) return null;
  const ratio = trueMm / row.wireMm;
  const [least, most] = kind === "solid" ? scaled.solid : scaled.cored;
  if (ratio < least || ratio > most) return null;
  const same = Math.abs(ratio - 1) <= scaled.sameSizeWithin;
  const area = ratio ** 2;
  return {
    a: row.a / area,
    b: row.b / area ** 2,
    c: (row.c ?? 0) / area,
    relativeError: Math.hypot(same ? row.relativeError : scaled.relativeError, areaRelativeError),
    range: [row.range[0] * area, row.range[1] * area],
    source: same
      ? row.source
      : remark(
          row.source,
          "scaled to this size: a with 1/d², b with 1/d⁴",
          row.source.confidence === "derived" ? "own-estimate" : row.source.confidence,
        ),
  };
}
