import { MOST_PATH_POINTS, type Draft } from "./draft";
import type { PhotoPoint } from "@/lib/marks";
import type { Tool } from "./types";

export type PathDraft = Extract<Draft, { kind: "path" }>;

/** The edge found from one point to another: the corners between the two, none where a straight line does. */
export interface Stretch {
  readonly from: PhotoPoint;
  readonly to: PhotoPoint;
  readonly corners: readonly PhotoPoint[];
}

/** What may run along an edge. What a scale or a section is made of is set point by point. */
const following: ReadonlySet<Tool> = new Set<Tool>(["line", "outline", "weld-line"]);

export const mayFollow = (tool: Tool): boolean => following.has(tool);

const isAt = (a: PhotoPoint | undefined, b: PhotoPoint): boolean => a?.x === b.x && a.y === b.y;

/** The stretch that was asked for, if this is the one that was found. */
const cornersOf = (found: Stretch | null, from: PhotoPoint, to: PhotoPoint) =>
  found !== null && isAt(found.from, from) && isAt(found.to, to) ? found.corners : null;

/** Between the points of a path, one entry for each stretch: straight where nothing is said. */
const edgesOf = ({ points, edges = [] }: PathDraft): readonly (readonly PhotoPoint[] | null)[] =>
  points.slice(1).map((_, i) => (i < edges.length ? edges[i]! : []));

/**
 * A point was placed with "along the edge" on: its stretch takes the edge that was shown, or waits for one. A draft that
 * did not grow by a point stays as it is.
 */
export function placedAlong(before: Draft | null, draft: Draft | null, shown: Stretch | null): Draft | null {
  if (draft?.kind !== "path" || !mayFollow(draft.tool) || draft.points.length < 2) return draft;
  const had = before?.kind === "path" ? before.points.length : 0;
  if (draft.points.length !== had + 1) return draft;
  const [from, to] = draft.points.slice(-2) as [PhotoPoint, PhotoPoint];
  return { ...draft, edges: [...edgesOf(draft).slice(0, -1), cornersOf(shown, from, to)] };
}

/** The edge that was looked for goes where it was asked for; points that a hand set, and stretches that are settled, stay. */
export function withStretch(draft: Draft | null, found: Stretch): Draft | null {
  if (draft?.kind !== "path" || !draft.edges?.includes(null)) return draft;
  const room = MOST_PATH_POINTS - draft.points.length - edgesOf(draft).flatMap((one) => one ?? []).length;
  const corners = found.corners.length <= room ? found.corners : [];
  const isHere = (i: number) => isAt(draft.points[i], found.from) && isAt(draft.points[i + 1], found.to);
  return { ...draft, edges: edgesOf(draft).map((one, i) => (one === null && isHere(i) ? corners : one)) };
}

/** Which edge is to be looked for now: of a stretch that waits for one, else, while lines follow, up to the pointer. */
export function stretchWanted(
  draft: Draft | null,
  follows: boolean,
): { readonly from: PhotoPoint; readonly to: PhotoPoint } | null {
  if (draft?.kind !== "path" || !mayFollow(draft.tool)) return null;
  const { points, next } = draft;
  const waits = edgesOf(draft).indexOf(null);
  if (waits >= 0) return { from: points[waits]!, to: points[waits + 1]! };
  const last = points.at(-1);
  return follows && last && next && !isAt(last, next) ? { from: last, to: next } : null;
}

/**
 * By which a search is known; null: none is wanted. A point may be set in the moment between an edge being found and shown:
 * its stretch then waits for the very places that were looked for, so a stretch that waits is another search than a loose end.
 */
export function searchKey(draft: Draft | null, follows: boolean): string | null {
  const wanted = stretchWanted(draft, follows);
  if (wanted === null || draft?.kind !== "path") return null;
  const { from, to } = wanted;
  return `${draft.points.length} ${from.x} ${from.y} ${to.x} ${to.y}`;
}

/** Corners from the last point towards the pointer, as far as they are known: of where it was a moment ago, if need be. */
export function looseCorners(draft: Draft | null, shown: Stretch | null): readonly PhotoPoint[] {
  if (draft?.kind !== "path" || draft.next === null || shown === null) return [];
  const last = draft.points.at(-1);
  return isAt(last, shown.from) ? shown.corners : [];
}

/** With the loose end as it would be set now, for its size. */
export function withLooseEnd(draft: PathDraft, shown: Stretch | null): PathDraft {
  const { points, next } = draft;
  if (next === null) return draft;
  const edges = points.length === 0 ? [] : [...edgesOf(draft), looseCorners(draft, shown)];
  return { ...draft, points: [...points, next], edges };
}
