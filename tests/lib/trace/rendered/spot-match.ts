/** A hole or a ball, true or said, in pixels as they are read. */
export interface Round {
  readonly kind: "hole" | "spatter";
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** How far beyond the true round a said middle may lie. */
const TOLERANCE_PX = 3;

/**
 * For each said one, in the order given, which true one of its kind it is: the nearest not yet taken whose radius and a
 * little more its middle lies within; -1: none. What comes after never changes what came before.
 */
export function matchSpots(truths: readonly Round[], said: readonly Round[]): readonly number[] {
  const taken = new Set<number>();
  return said.map(({ kind, x, y }) => {
    let [best, nearest] = [-1, Infinity];
    truths.forEach((truth, i) => {
      const far = Math.hypot(truth.x - x, truth.y - y);
      if (truth.kind !== kind || taken.has(i) || far > truth.radius + TOLERANCE_PX || far >= nearest) return;
      [best, nearest] = [i, far];
    });
    if (best >= 0) taken.add(best);
    return best;
  });
}
