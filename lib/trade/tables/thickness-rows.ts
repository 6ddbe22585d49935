import { MM_PER_INCH, type Source } from "@/lib/base";
import { cite } from "../cite";

/** Plate too thin (floor) or too thick (cap) for wires of these classes. */
export interface ThicknessRow {
  readonly classes: readonly string[];
  /** The row speaks of wires up to this size, mm; null: of every size. */
  readonly upToDiameterMm: number | null;
  readonly kind: "floor" | "cap";
  readonly mm: number;
  /** Where it differs in vertical; null: the same everywhere. */
  readonly verticalMm: number | null;
  readonly source: Source;
}

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
    classes: ["E70T-1", "E71T-1", "E70T-1C", "E71T-1C", "E70T-1M", "E71T-1M"],
    upToDiameterMm: null,
    kind: "floor",
    // 1/8 in is read as the 3 mm plate it is sold as, so that nominal 3 mm is not called too thin.
    mm: 3,
    verticalMm: (3 / 16) * MM_PER_INCH,
    source: cite("filler-metal-course", "seen"),
  },
];
