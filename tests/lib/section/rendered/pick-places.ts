type At = readonly [number, number];

/** A person sets a point at every corner, and between them after so much way or so much of a bend. */
const CORNER_DEG = 28;
const BEND_DEG = 16;

/**
 * Where a person who follows a boundary sets points: at its corners, the toes among them, and in between about every
 * millimetre and a half, closer where it bends; each hand a little differently.
 *
 * @param ring Dense. @param usualMm From point to point where it is straight.
 */
export function pickPlaces(ring: readonly At[], random: () => number, usualMm = 1.5): readonly At[] {
  const n = ring.length;
  const stepMm = usualMm * (0.8 + 0.4 * random());
  const heading = (i: number): number => {
    const [a, b] = [ring[i % n]!, ring[(i + 1) % n]!];
    return Math.atan2(b[1] - a[1], b[0] - a[0]);
  };
  const turn = (i: number): number => {
    const by = heading(i) - heading(i + n - 1);
    return Math.abs(Math.atan2(Math.sin(by), Math.cos(by))) * (180 / Math.PI);
  };
  const corner = ring.map((_, i) => turn(i) > CORNER_DEG);
  const start = Math.max(0, corner.indexOf(true));
  const places: At[] = [];
  let [way, bend] = [Infinity, 0];
  for (let k = 0; k < n; k++) {
    const i = (start + k) % n;
    const before = ring[(i + n - 1) % n]!;
    const here = ring[i]!;
    way += Math.hypot(here[0] - before[0], here[1] - before[1]);
    bend += turn(i);
    if (corner[i] || way > stepMm || (bend > BEND_DEG && way > 0.2 * usualMm)) {
      // The pick just before a corner is left out where it would crowd it.
      const last = places.at(-1);
      if (
        corner[i] &&
        last !== undefined &&
        way < 0.3 * stepMm &&
        places.length > 1 &&
        !isCorner(ring, corner, last)
      )
        places.pop();
      places.push(here);
      [way, bend] = [0, 0];
    }
  }
  const [first, last] = [places[0]!, places.at(-1)!];
  const crowded = Math.hypot(first[0] - last[0], first[1] - last[1]) < 0.3 * stepMm;
  return crowded && !isCorner(ring, corner, last) ? places.slice(0, -1) : places;
}

const isCorner = (ring: readonly At[], corner: readonly boolean[], place: At): boolean =>
  corner[ring.indexOf(place)] ?? false;
