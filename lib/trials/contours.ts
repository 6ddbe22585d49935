/** A piece of a contour, in columns and rows of the grid. */
export type Segment = readonly [x1: number, y1: number, x2: number, y2: number];

/**
 * Where a value is crossed on a grid of values (rows of columns), as straight pieces: marching squares, each cell cut along
 * its diagonal so that no saddle is ambiguous. A cell with an unknown corner has none.
 */
export function contour(grid: readonly (readonly (number | null)[])[], level: number): readonly Segment[] {
  const out: Segment[] = [];
  for (let row = 0; row + 1 < grid.length; row += 1)
    for (let column = 0; column + 1 < grid[row]!.length; column += 1) {
      const at = (dx: number, dy: number): Corner => [
        column + dx,
        row + dy,
        grid[row + dy]![column + dx] ?? null,
      ];
      for (const triangle of [
        [at(0, 0), at(1, 0), at(0, 1)],
        [at(1, 0), at(1, 1), at(0, 1)],
      ] as const)
        out.push(...cut(triangle, level));
    }
  return out;
}

type Corner = readonly [x: number, y: number, value: number | null];

function cut(corners: readonly [Corner, Corner, Corner], level: number): readonly Segment[] {
  const edges = [
    [corners[0], corners[1]],
    [corners[1], corners[2]],
    [corners[2], corners[0]],
  ] as const;
  const points = edges.flatMap(([[x1, y1, a], [x2, y2, b]]) => {
    if (a === null || b === null || a < level === b < level) return [];
    const share = (level - a) / (b - a);
    return [[x1 + share * (x2 - x1), y1 + share * (y2 - y1)] as const];
  });
  if (corners.some(([, , value]) => value === null) || points.length !== 2) return [];
  return [[...points[0]!, ...points[1]!]];
}
