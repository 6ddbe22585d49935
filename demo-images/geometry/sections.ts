import { sampleHeight, type HeightGrid } from "../field/height-grid";
import type { Bead } from "./bead";
import { surfaceDistance, type Profile } from "./profile";

/** The bead cut across at one place, as it lies in the height field. Lengths in mm. */
export interface Section {
  /** Plan x. */
  readonly xMm: number;
  readonly leftMm: number;
  readonly rightMm: number;
  /** Toe to toe in a straight line. */
  readonly widthMm: number;
  /** Face above the line that joins the toes, at its middle and square to it; negative where it is hollow. */
  readonly heightMm: number;
  /** Toe to the joint's corner over the plate's surface; null on work without a corner. */
  readonly lowerLegMm: number | null;
  readonly upperLegMm: number | null;
}

/** True where two plates meet in a corner that a fillet fills or an edge it covers. */
export const hasCorner = (profile: Profile): boolean =>
  profile.facets.length === 2 || profile.facets[0]!.name === "lower-plate";

/** Sections every millimetre along the bead, cut through the heights of `grid`. */
export function beadSections(grid: HeightGrid, profile: Profile, bead: Bead): Section[] {
  const corner = hasCorner(profile);
  const sections: Section[] = [];
  for (let x = bead.shape.startMm + 1; x < bead.shape.endMm; x += 1) {
    const toes = bead.toesAt(x);
    if (toes === null) continue;
    const { leftMm, rightMm } = toes;
    const zl = sampleHeight(grid, x, leftMm);
    const zr = sampleHeight(grid, x, rightMm);
    const widthMm = Math.hypot(rightMm - leftMm, zr - zl);
    const level = (rightMm - leftMm) / widthMm;
    const middle = sampleHeight(grid, x, (leftMm + rightMm) / 2);
    sections.push({
      xMm: x,
      leftMm,
      rightMm,
      widthMm,
      heightMm: (middle - (zl + zr) / 2) * level,
      lowerLegMm: corner ? Math.abs(surfaceDistance(profile, leftMm)) : null,
      upperLegMm: corner ? Math.abs(surfaceDistance(profile, rightMm)) : null,
    });
  }
  return sections;
}
