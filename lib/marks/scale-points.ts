import { assertNever } from "@/lib/base";
import type { PhotoPoint, Scale } from "./drawing";

/** Every picked point of the scale, photo pixels, in the order of its parts. */
export function scalePoints(scale: Scale): readonly PhotoPoint[] {
  switch (scale.kind) {
    case "two-points":
      return [scale.a, scale.b];
    case "rectangle":
      return scale.corners;
    case "strip":
      return scale.corners.map(({ x, y }) => ({ x, y }));
    case "edges":
      return scale.edges.flat();
    case "disc":
      return scale.rim;
    default:
      return assertNever(scale);
  }
}

/** The same scale with every picked point changed; `index` counts as in `scalePoints`. Lengths stay as stated. */
export function mapScalePoints(
  scale: Scale,
  change: (point: PhotoPoint, index: number) => PhotoPoint,
): Scale {
  switch (scale.kind) {
    case "two-points":
      return { ...scale, a: change(scale.a, 0), b: change(scale.b, 1) };
    case "rectangle": {
      const [a, b, c, d] = scale.corners;
      return { ...scale, corners: [change(a, 0), change(b, 1), change(c, 2), change(d, 3)] };
    }
    case "edges":
      return {
        ...scale,
        edges: scale.edges.map(([a, b], i) => [change(a, 2 * i), change(b, 2 * i + 1)]),
      };
    case "disc":
      return { ...scale, rim: scale.rim.map(change) };
    case "strip":
      return { ...scale, corners: scale.corners.map((corner, i) => ({ ...corner, ...change(corner, i) })) };
    default:
      return assertNever(scale);
  }
}
