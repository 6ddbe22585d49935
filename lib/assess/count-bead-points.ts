import { countPoints } from "@/lib/marks";
import type { BeadContent } from "./bead";

/**
 * All points on all photos of a bead, as what measuring them costs. Each pick of a section moves every figure of it, so its
 * cost grows with the square: sixty points count as nine hundred, and one section has room for about 280.
 */
export function countBeadPoints({ photos }: Pick<BeadContent, "photos">): number {
  return photos.reduce((sum, { drawing, section }) => {
    const edges = section?.edges ?? [];
    const cut = edges.reduce((all, { points }) => all + points.length, section?.outline?.length ?? 0);
    return sum + countPoints(drawing) + (cut * cut) / 4;
  }, 0);
}
