import type { PhotoPoint } from "@/lib/marks";
import type { Point } from "@/lib/geometry";
import type { SectionDrawing, SectionEdgeRole } from "./drawing";

/** All picks of a drawing in one list, and where each part of it lies. */
export interface SectionPicks {
  readonly all: readonly PhotoPoint[];
  readonly outline: number;
  readonly edges: readonly { readonly role: SectionEdgeRole; readonly from: number; readonly to: number }[];
  readonly root: number | null;
}

export function picksOf({ outline, edges, root }: SectionDrawing): SectionPicks {
  const ring = outline ?? [];
  let at = ring.length;
  const parts = edges.map(({ role, points }) => {
    const from = at;
    at += points.length;
    return { role, from, to: at };
  });
  return {
    all: [...ring, ...edges.flatMap(({ points }) => points), ...(root === null ? [] : [root])],
    outline: ring.length,
    edges: parts,
    root: root === null ? null : at,
  };
}

/** The parts again, of points in the same order: mapped, or displaced by an error. */
export function partsOf<S>(picks: SectionPicks, points: readonly Point<S>[]) {
  return {
    ring: points.slice(0, picks.outline),
    edge: (role: SectionEdgeRole): readonly Point<S>[] | null => {
      const found = picks.edges.find((part) => part.role === role);
      return found === undefined ? null : points.slice(found.from, found.to);
    },
    root: picks.root === null ? null : points[picks.root]!,
  };
}
