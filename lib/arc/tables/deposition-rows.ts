import type { Source } from "@/lib/base";
import { cite, fromMemory, remark, withoutDocument } from "@/lib/trade";
import type { WireKind } from "./burn-off-rows";

export interface DepositionRow {
  readonly kind: WireKind;
  /** Deposited mass over wire mass consumed. */
  readonly efficiency: number;
  readonly efficiencySource: Source;
  /** Linear mass over that of solid steel wire of the same size. */
  readonly fill: number;
  readonly fillSource: Source;
}

const handbook = cite("deposition-handbook", "seen");
const e70c = cite("e70c-6m-sheet", "derived", { note: "0.420 lb per 1000 in over solid 0.045 in wire" });
const tubular = remark(fromMemory, "of tubular wire; 0.80 to 0.88 is usual");
const solid = withoutDocument("by definition: solid steel wire", "derived");

export const depositionRows: readonly DepositionRow[] = [
  {
    kind: "solid",
    efficiency: 0.96,
    efficiencySource: remark(handbook, "75Ar-25CO2; CO2 0.93, argon with 2 % oxygen 0.98"),
    fill: 1,
    fillSource: solid,
  },
  { kind: "metal-cored", efficiency: 0.91, efficiencySource: e70c, fill: 0.922, fillSource: e70c },
  { kind: "flux-cored", efficiency: 0.86, efficiencySource: handbook, fill: 0.85, fillSource: tubular },
  { kind: "self-shielded", efficiency: 0.78, efficiencySource: handbook, fill: 0.85, fillSource: tubular },
  {
    kind: "stainless-cored",
    efficiency: 0.86,
    efficiencySource: remark(
      handbook,
      "the figure for gas-shielded cored wire, lent to stainless",
      "own-estimate",
    ),
    fill: 0.85,
    fillSource: tubular,
  },
];

/** Relative error of the deposited area: efficiency about 4 %, fill about 6 %, feed dial about 5 %, added in squares. */
export const AREA_RELATIVE_ERROR = 0.09;
