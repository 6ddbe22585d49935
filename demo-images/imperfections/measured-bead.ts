import { sampleHeight, type HeightGrid } from "../field/height-grid";
import { beadSections, type Section } from "../geometry/sections";
import type { Profile } from "../geometry/profile";
import { lastBead, type SceneDraft } from "./draft";

/** A bead cut into sections, with the field and the joint it lies in. */
export interface MeasuredBead {
  readonly grid: HeightGrid;
  readonly profile: Profile;
  /** Start and crater left out: they are imperfections of their own. */
  readonly sections: readonly Section[];
}

/** The last bead without its start and its crater, in the heights before any imperfection. */
export function measuredBead(draft: SceneDraft): MeasuredBead {
  const bead = lastBead(draft);
  const half = (bead.shape.rightMm - bead.shape.leftMm) / 2;
  const grid = { ...draft.grid, h: draft.smooth };
  const sections = beadSections(grid, draft.profile, bead).filter(
    ({ xMm }) => xMm > bead.shape.startMm + 1.5 * half && xMm < bead.shape.endMm - 2.5 * half,
  );
  return { grid, profile: draft.profile, sections };
}

/** Height of the face's middle over the line that joins the two plates' edges, section by section. */
export function aboveThePlates({ grid, profile, sections }: MeasuredBead): number[] {
  const left = profile.facets[0]!;
  const right = profile.facets[profile.facets.length - 1]!;
  return sections.map(({ xMm, leftMm, rightMm }) => {
    const y = (leftMm + rightMm) / 2;
    const line = left.z1 + ((y - left.y1) * (right.z0 - left.z1)) / (right.y0 - left.y1);
    return sampleHeight(grid, xMm, y) - line;
  });
}
