import type { Source } from "@/lib/base";
import type { ElectrodeClass } from "./electrode-class";
import type { Position } from "./names";
import { thicknessRows, type ThicknessRow } from "./tables/thickness-rows";
import { isInchSize } from "./wire-size";

export interface ThicknessLimit {
  readonly kind: "floor" | "cap";
  readonly mm: number;
  readonly source: Source;
}

/**
 * Plate too thin or too thick for the wire, mm. A floor in vertical is higher than in flat; an unknown position
 * gives the flat floor, the one that binds everywhere.
 * Empty where nothing is known.
 */
export function thicknessLimits(
  electrode: ElectrodeClass,
  diameterMm: number | null,
  position: Position | null,
): readonly ThicknessLimit[] {
  const speaks = ({ classes, upToDiameterMm, diametersIn }: ThicknessRow): boolean =>
    classes.includes(electrode.id) &&
    (diametersIn === undefined ||
      (diameterMm !== null && diametersIn.some((inches) => isInchSize(inches, diameterMm)))) &&
    (upToDiameterMm === null || (diameterMm !== null && diameterMm <= upToDiameterMm));
  return thicknessRows.filter(speaks).map(({ kind, mm, verticalMm, source }) => ({
    kind,
    mm: position === "vertical" ? (verticalMm ?? mm) : mm,
    source,
  }));
}
