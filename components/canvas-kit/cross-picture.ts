import { highlight } from "@/components/picture";
import { add, times, type Point } from "@/lib/geometry";
import type { Primitive } from "@/lib/marks";
import { PIXEL_ZOOM } from "./view";

/** Arms from `near` to `far`, CSS pixels from the point, which stays open. */
function arms(at: Point<"photo">, near: number, far: number, unitPx: number): readonly Primitive[] {
  const arm = (dx: number, dy: number) => ({
    kind: "path" as const,
    points: [near, far].map((reach) => ({ x: at.x + dx * reach * unitPx, y: at.y + dy * reach * unitPx })),
    closed: false,
    dash: [],
  });
  return [arm(1, 0), arm(-1, 0), arm(0, 1), arm(0, -1)].flatMap((line) => [
    { ...line, stroke: highlight.light, width: 6 * unitPx },
    { ...line, stroke: highlight.line, width: 2.5 * unitPx },
  ]);
}

/** The keyboard's cross-hair: four arms that leave the point itself open, close up with hair lines up to it. */
export const crossPicture = (at: Point<"photo">, unitPx: number): readonly Primitive[] => [
  ...pixelPicture(at, unitPx),
  ...arms(at, isClose(unitPx) ? 10 : 5, 26, unitPx),
];

const isClose = (unitPx: number): boolean => 1 / unitPx >= PIXEL_ZOOM;

/**
 * Close up, where the photo's pixels are seen: hair lines that point at the place to a part of a pixel and leave it open.
 * Nothing from farther away, where a pixel is smaller than a line.
 */
export function pixelPicture(at: Point<"photo">, unitPx: number): readonly Primitive[] {
  if (!isClose(unitPx)) return [];
  const hairs = [
    { x: -1, y: 0 },
    { x: 1, y: 0 },
    { x: 0, y: -1 },
    { x: 0, y: 1 },
  ].map((way) => [2.5, 8].map((off) => add(at, times(way, off * unitPx))));
  const paths = hairs.map((points) => ({ kind: "path" as const, points, closed: false, dash: [] }));
  return [
    ...paths.map((path) => ({ ...path, stroke: highlight.light, width: 2.5 * unitPx })),
    ...paths.map((path) => ({ ...path, stroke: highlight.line, width: unitPx })),
  ];
}
