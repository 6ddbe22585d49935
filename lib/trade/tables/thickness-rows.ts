import { MM_PER_INCH, type Source } from "@/lib/base";
import { cite, fromMemory, remark } from "../cite";

/** Plate too thin (floor) or too thick (cap) for wires of these classes. */
export interface ThicknessRow {
  readonly classes: readonly string[];
  /** The row speaks of wires up to this size, mm; null: of every size. */
  readonly upToDiameterMm: number | null;
  /** Given: of these sizes only, inches. */
  readonly diametersIn?: readonly number[];
  readonly kind: "floor" | "cap";
  readonly mm: number;
  /** Where it differs in vertical; null: the same everywhere. */
  readonly verticalMm: number | null;
  readonly source: Source;
}

const SOLID = ["ER70S-6", "ER70S-3"];
const T11 = ["E71T-11", "E70T-11"];
const T1 = ["E70T-1", "E71T-1", "E70T-1C", "E71T-1C", "E70T-1M", "E71T-1M"];

const row = (
  classes: readonly string[],
  diametersIn: readonly number[],
  kind: ThicknessRow["kind"],
  mm: number,
  source: Source,
): ThicknessRow => ({
  classes,
  upToDiameterMm: null,
  diametersIn,
  kind,
  mm,
  verticalMm: null,
  source,
});

/** The thinnest plate a size of wire is used on by hand; rounded down to the sheet it is sold as. */
const LEAST = remark(fromMemory, "usual least thickness for this size of wire");
export const thicknessRows: readonly ThicknessRow[] = [
  {
    classes: ["E71T-11"],
    upToDiameterMm: 1.25,
    kind: "cap",
    mm: (5 / 16) * MM_PER_INCH,
    verticalMm: null,
    source: cite("trade-reference-notes", "seen", { note: "for .030 to .045 in wire: about 5/16 in" }),
  },
  {
    classes: T1,
    upToDiameterMm: null,
    kind: "floor",
    // 1/8 in is read as the 3 mm plate it is sold as, so that nominal 3 mm is not called too thin.
    mm: 3,
    verticalMm: (3 / 16) * MM_PER_INCH,
    source: cite("filler-metal-course", "seen"),
  },
  row(T1, [0.052], "floor", 4.7, LEAST),
  row(T1, [1 / 16], "floor", 6, LEAST),
  row(T11, [0.03, 0.035], "floor", 1.2, LEAST),
  row(T11, [0.045], "floor", 1.5, LEAST),
  row(T11, [0.068], "floor", 3, LEAST),
  row(["E71T-GS"], [0.03, 0.035], "floor", 1.2, LEAST),
  row(["E71T-8", "E70T-8"], [1 / 16, 0.068, 0.072, 5 / 64], "floor", 3, LEAST),
  row(
    SOLID,
    [0.03, 0.035],
    "floor",
    0.7,
    cite("small-wire-manual-settings", "seen", { note: "its table begins at 22 gauge" }),
  ),
  row(SOLID, [0.045], "floor", 1.5, LEAST),
];
