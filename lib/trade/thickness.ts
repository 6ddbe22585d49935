import { MM_PER_INCH, type Source } from "@/lib/base";
import type { ElectrodeClass } from "./electrode-class";
import type { Position } from "./names";
import { fillerCourse, remark, shopReferenceNotes } from "./tables/sources";

export interface ThicknessLimit {
  readonly kind: "floor" | "cap";
  readonly mm: number;
  readonly source: Source;
}

const small = (diameterMm: number) => diameterMm <= 1.25;

/**
 * Plate too thin or too thick for the wire, mm. A floor in vertical is higher than in flat; an unknown position
 * gives the flat floor, the one that binds everywhere. Empty where nothing is known.
 */
export function thicknessLimits(
  electrode: ElectrodeClass,
  diameterMm: number | null,
  position: Position | null,
): readonly ThicknessLimit[] {
  if (electrode.id === "E71T-11" && diameterMm !== null && small(diameterMm)) {
    const source = remark(shopReferenceNotes, "for .030 to .045 in wire: about 5/16 in");
    return [{ kind: "cap", mm: (5 / 16) * MM_PER_INCH, source }];
  }
  if (/^E7[01]T-1[CM]?$/.test(electrode.id)) {
    // 1/8 in is read as the 3 mm plate it is sold as, so that nominal 3 mm is not called too thin.
    const mm = position === "vertical" ? (3 / 16) * MM_PER_INCH : 3;
    return [{ kind: "floor", mm, source: fillerCourse }];
  }
  return [];
}
