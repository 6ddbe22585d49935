import { MOST_WORDS, type LayerItem, type LayerPoint } from "@/lib/course";
import { simplifyPath } from "@/lib/marks";

export const layerTools = ["move", "arrow", "text", "freehand", "outline"] as const;
export type LayerTool = (typeof layerTools)[number];
export type DrawingTool = Exclude<LayerTool, "move">;

const round = ({ x, y }: LayerPoint): LayerPoint => ({
  x: Math.round(x * 10) / 10,
  y: Math.round(y * 10) / 10,
});

/** Most points one item keeps: what its schema takes. */
const MOST_POINTS = 500;

/**
 * An item from the points a hand gave so far: dragged, tapped or set by keyboard alike. null while there are too few.
 * `tolerance`, photo pixels: what a freehand path may be off after its needless points are left out.
 */
export function draftItem(
  tool: DrawingTool,
  id: string,
  points: readonly LayerPoint[],
  tolerance: number,
): LayerItem | null {
  const [first] = points;
  const last = points.at(-1);
  if (!first || !last) return null;
  if (tool === "text") return null;
  if (tool === "arrow")
    return points.length < 2 || (first.x === last.x && first.y === last.y)
      ? null
      : { id, kind: "arrow", from: round(first), to: round(last), words: "" };
  const kept = simplifyPath(points, tolerance).slice(0, MOST_POINTS).map(round);
  if (kept.length < (tool === "outline" ? 3 : 2)) return null;
  return { id, kind: tool, points: kept };
}

export function textItem(id: string, at: LayerPoint, words: string): LayerItem | null {
  const said = words.trim().slice(0, MOST_WORDS);
  return said === "" ? null : { id, kind: "text", at: round(at), words: said };
}
