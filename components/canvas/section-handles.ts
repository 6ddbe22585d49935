import { fewestPoints, type PhotoPoint } from "@/lib/marks";
import type { SectionAction } from "@/lib/assess";
import type { SectionEdgeRole } from "@/lib/section";
import { between, type Handle } from "./handle";
import type { SectionWork, Tool } from "./types";

/** Places to take hold of on a section, by the tool in hand; null where the tool is none of a section's. */
export function sectionHandles(
  { section, places }: Pick<SectionWork, "section" | "places">,
  tool: Tool,
  unitPx: number,
): readonly Handle[] | null {
  switch (tool) {
    case "metal":
      return section.outline === null ? [] : outlineHandles(section.outline, unitPx);
    case "edge":
      return section.edges.flatMap(({ role, points }) => edgeHandles(role, points));
    case "root":
      return [
        ...(section.root === null ? [] : [rootHandle(section.root)]),
        ...([0, 1] as const).flatMap((side) => toeHandle(side, { section, places })),
      ];
    default:
      return null;
  }
}

function outlineHandles(points: readonly PhotoPoint[], unitPx: number): readonly Handle[] {
  const set = (next: readonly PhotoPoint[]): SectionAction => ({ type: "section.outline", points: next });
  const corners = points.map((at, index): Handle => ({
    key: `metal-${index}`,
    at,
    role: "point",
    move: (to) => set(points.with(index, to)),
    remove: points.length > fewestPoints.outline ? set(points.toSpliced(index, 1)) : null,
  }));
  const insert = (index: number, at: PhotoPoint) => set(points.toSpliced(index, 0, at));
  return [...between("metal", [...points, points[0]!], unitPx, insert), ...corners];
}

function edgeHandles(role: SectionEdgeRole, points: readonly PhotoPoint[]): readonly Handle[] {
  const set = (next: readonly PhotoPoint[] | null): SectionAction => ({
    type: "section.edge",
    role,
    points: next,
  });
  return points.map((at, index) => ({
    key: `${role}-${index}`,
    at,
    role: "point",
    move: (to) => set(points.with(index, to)),
    // Without one of its ends a straight edge is none: it goes as a whole.
    remove: set(points.length > fewestPoints.line ? points.toSpliced(index, 1) : null),
  }));
}

const rootHandle = (at: PhotoPoint): Handle => ({
  key: "root",
  at,
  role: "point",
  move: (to) => ({ type: "section.root", at: to }),
  remove: { type: "section.root", at: null },
});

/** A toe that was found may be put elsewhere; one that was put there may be let go again. */
function toeHandle(
  side: 0 | 1,
  { section, places }: Pick<SectionWork, "section" | "places">,
): readonly Handle[] {
  const put = section.toes[side];
  const at = places?.toes[side] ?? put;
  if (at === null) return [];
  return [
    {
      key: `toe-${side}`,
      at,
      role: "point",
      move: (to) => ({ type: "section.toe", side, at: to }),
      remove: put === null ? null : { type: "section.toe", side, at: null },
    },
  ];
}
