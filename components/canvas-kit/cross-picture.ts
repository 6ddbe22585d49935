import { highlight } from "@/components/picture";
import type { Point } from "@/lib/geometry";
import type { Primitive } from "@/lib/marks";

/** The keyboard's cross-hair: four arms that leave the point itself open. */
export function crossPicture(at: Point<"photo">, unitPx: number): readonly Primitive[] {
  const arm = (dx: number, dy: number) => ({
    kind: "path" as const,
    points: [5, 26].map((reach) => ({ x: at.x + dx * reach * unitPx, y: at.y + dy * reach * unitPx })),
    closed: false,
    dash: [],
  });
  return [arm(1, 0), arm(-1, 0), arm(0, 1), arm(0, -1)].flatMap((line) => [
    { ...line, stroke: highlight.light, width: 6 * unitPx },
    { ...line, stroke: highlight.line, width: 2.5 * unitPx },
  ]);
}
