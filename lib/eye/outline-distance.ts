import { distanceToPolyline, type Point } from "@/lib/geometry";

type Outline = readonly (readonly [number, number])[];

/** Even-odd, so an outline that crosses itself has holes. */
function isInside({ x, y }: Point<"photo">, outline: Outline): boolean {
  let inside = false;
  for (const [i, [ax, ay]] of outline.entries()) {
    const [bx, by] = outline[(i + 1) % outline.length] ?? [ax, ay];
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  }
  return inside;
}

/** Pixels from a spot to a closed outline; 0 inside. */
export function outlineDistance(at: Point<"photo">, outline: Outline): number {
  if (isInside(at, outline)) return 0;
  const [first] = outline;
  const closed = first ? [...outline, first] : [];
  return distanceToPolyline(
    at,
    closed.map(([x, y]) => ({ x, y })),
  );
}
