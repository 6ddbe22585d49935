import {
  add,
  distance,
  dot,
  fitLine,
  linesMeet,
  subtract,
  times,
  type FittedLine,
  type Point,
} from "@/lib/geometry";
import { lightBetween, type RgbaImage } from "./grey-image";

const SAMPLES = 24;

/**
 * Corners of a dark square to a fraction of a pixel. Along the middle 80 % of each side the place where the brightness
 * crosses half way between inside and outside is found on short profiles square to the side; a line is fitted to each
 * side, and neighbouring lines meet in the corner. Twice, so that a coarse first guess does no harm. Null when a side
 * cannot be found.
 */
export function refineMarker(
  image: RgbaImage,
  corners: readonly Point<"photo">[],
): readonly Point<"photo">[] | null {
  let current = corners;
  for (let pass = 0; pass < 2; pass++) {
    const sides = current.map((corner, i) => refineSide(image, corner, current[(i + 1) % 4]!, current));
    if (sides.some((side) => side === null)) return null;
    const next = sides.map((side, i) => {
      const before = sides[(i + 3) % 4]!;
      return linesMeet(
        before.through,
        add(before.through, before.direction),
        side!.through,
        add(side!.through, side!.direction),
      );
    });
    if (next.some((corner) => corner === null)) return null;
    current = next as readonly Point<"photo">[];
  }
  return current;
}

function refineSide(
  image: RgbaImage,
  a: Point<"photo">,
  b: Point<"photo">,
  ring: readonly Point<"photo">[],
): FittedLine<"photo"> | null {
  const reach = distance(a, b);
  if (!(reach > 0)) return null;
  const along = times(subtract(b, a), 1 / reach);
  const middle = times(
    ring.reduce((sum, corner) => add(sum, corner), { x: 0, y: 0 }),
    0.25,
  );
  const normal = { x: along.y, y: -along.x };
  const out = dot(subtract(a, middle), normal) > 0 ? normal : times(normal, -1);
  // A module is an eighth of the side: further in or out other edges begin.
  const half = Math.max(2, 0.07 * reach);
  const found: Point<"photo">[] = [];
  for (let i = 0; i < SAMPLES; i++) {
    const at = add(a, times(along, reach * (0.1 + (0.8 * i) / (SAMPLES - 1))));
    const crossing = halfWay(image, at, out, half);
    if (crossing !== null) found.push(add(at, times(out, crossing)));
  }
  if (found.length < SAMPLES / 2) return null;
  const first = fitLine(found);
  if (first === null) return null;
  const off = (p: Point<"photo">): number =>
    Math.abs(first.direction.x * (p.y - first.through.y) - first.direction.y * (p.x - first.through.x));
  return fitLine(found.filter((p) => off(p) <= 2.5 * first.rms + 1e-9)) ?? first;
}

/** Where the profile along `out` crosses the level half way between its dark and its bright end; null without contrast. */
function halfWay(image: RgbaImage, at: Point<"photo">, out: Point<"photo">, half: number): number | null {
  const steps = Math.ceil(8 * half);
  const place = (k: number): number => -half + (2 * half * k) / steps;
  const level = (k: number): number => {
    const p = add(at, times(out, place(k)));
    return lightBetween(image, p.x, p.y);
  };
  const profile = Array.from({ length: steps + 1 }, (_, k) => level(k));
  const dark = profile[0]!;
  const bright = profile[steps]!;
  // Ink gives back a tenth of what paper does; with less than twice the light outside it is no edge of a marker.
  if (!(bright > 2 * dark) || bright - dark < 0.01) return null;
  const wanted = (dark + bright) / 2;
  for (let k = 1; k <= steps; k++) {
    const [p, q] = [profile[k - 1]!, profile[k]!];
    if (p < wanted && q >= wanted) return place(k - 1) + ((wanted - p) / (q - p)) * (place(k) - place(k - 1));
  }
  return null;
}
