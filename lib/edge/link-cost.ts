import type { EdgeField } from "./edge-field";

/** What one step between neighbouring pixels costs; by their numbers in the patch. The same in both directions. */
export type LinkCost = (from: number, to: number) => number;

/**
 * How much each of the three parts counts: zero crossing, direction, strength of the gradient.
 * Source: E. N. Mortensen and W. A. Barrett, "Intelligent Scissors for Image Composition", SIGGRAPH 1995, from memory.
 */
const WEIGHT = { crossing: 0.43, direction: 0.43, strength: 0.14 } as const;
/** Of a step on a faultless edge, so that nothing is free and no path wanders for nothing. */
const LEAST = 0.02;
/** Off the straight line, a pixel: decides where the picture says nothing. */
const OFF_LINE = 0.0005;
/** Off it by the whole way between the points, squared: by a tenth of the way, about as much as a step without an edge. */
const FAR_OFF = 30;

/**
 * The costs of Mortensen and Barrett over an edge field, for a path between two pixels. Three things differ from theirs.
 * A step counts the mean of its two pixels instead of the one it leads to, and the direction is taken the way round that
 * suits both, so that a path costs the same in both directions; a diagonal step costs its length. And the farther off the
 * straight line, the dearer: whoever sets two points on a toe means the edge between them, not the harder one of the
 * plate beside it.
 */
export function linkCosts(field: EdgeField, start: number, end: number): LinkCost {
  const { columns, alongX, alongY, strength, crossing } = field;
  const off = offLine(columns, start, end);
  const own = strength.map(
    (share, k) => WEIGHT.crossing * (1 - crossing[k]!) + WEIGHT.strength * (1 - share) + LEAST + off(k),
  );
  return (from, to) => {
    const dx = (to % columns) - (from % columns);
    const dy = Math.floor(to / columns) - Math.floor(from / columns);
    const long = dx !== 0 && dy !== 0 ? Math.SQRT2 : 1;
    const a = Math.acos(held((alongX[from]! * dx + alongY[from]! * dy) / long));
    const b = Math.acos(held((alongX[to]! * dx + alongY[to]! * dy) / long));
    const turn = Math.min(a + b, 2 * Math.PI - a - b) / Math.PI;
    return long * ((own[from]! + own[to]!) / 2 + WEIGHT.direction * turn);
  };
}

const held = (value: number): number => Math.min(1, Math.max(-1, value));

/** What a pixel costs for lying off the straight line through two others. */
function offLine(columns: number, start: number, end: number): (cell: number) => number {
  const [x, y] = [start % columns, Math.floor(start / columns)];
  const [dx, dy] = [(end % columns) - x, Math.floor(end / columns) - y];
  const long = Math.hypot(dx, dy) || 1;
  return (cell) => {
    const off = Math.abs(dx * (Math.floor(cell / columns) - y) - dy * ((cell % columns) - x)) / long;
    return OFF_LINE * off + FAR_OFF * (off / long) ** 2;
  };
}
