import { applyHomography, homographyJacobian, invertHomography, type Homography } from "@/lib/geometry";
import { VIEW_WIDTH } from "@/lib/assess";

/** A projective map as CSS takes it apart: about `origin`, first `linear` with a depth, then the eye, then `shift`. */
export interface LaidTransform {
  readonly origin: readonly [x: number, y: number];
  readonly shift: readonly [x: number, y: number];
  /** x' = a x + b y, y' = c x + d y. */
  readonly linear: readonly [a: number, b: number, c: number, d: number];
  /** z' = p x + q y, seen from an eye `VIEW_WIDTH` in front: what is deeper comes out smaller. */
  readonly depth: readonly [p: number, q: number];
}

/**
 * How an image shown `VIEW_WIDTH` units wide is laid into the view by `toView` (photo pixels to view units). The origin
 * is what comes to lie in the view's middle, so that the eye is surely before it.
 */
export function laidTransform(toView: Homography, widthPx: number, heightUnits: number): LaidTransform {
  const px = widthPx / VIEW_WIDTH;
  const map = toView.map((entry, i) => (i % 3 === 2 ? entry : entry * px)) as unknown as Homography;
  const back = invertHomography(map);
  const middle = { x: VIEW_WIDTH / 2, y: heightUnits / 2 };
  const origin = back === null ? middle : applyHomography(back, middle);
  const at = applyHomography(map, origin);
  const w = map[6] * origin.x + map[7] * origin.y + map[8];
  return {
    origin: [origin.x, origin.y],
    shift: [at.x - origin.x, at.y - origin.y],
    linear: homographyJacobian(map, origin),
    depth: [(-map[6] / w) * VIEW_WIDTH, (-map[7] / w) * VIEW_WIDTH],
  };
}

/** One unit of the view in its container's own width, whatever that is on the screen. */
const units = (value: number): string => `${Number(((value * 100) / VIEW_WIDTH).toFixed(4))}cqw`;

/** The style of an image as wide as its container (`container-type: inline-size`). */
export function laidStyle({ origin, shift, linear, depth }: LaidTransform) {
  const [a, b, c, d] = linear;
  const matrix = [a, c, depth[0], 0, b, d, depth[1], 0, 0, 0, 1, 0, 0, 0, 0, 1];
  const numbers = matrix.map((value) => Number(value.toPrecision(8))).join(", ");
  return {
    transformOrigin: origin.map(units).join(" "),
    transform: `translate(${shift.map(units).join(", ")}) perspective(${units(VIEW_WIDTH)}) matrix3d(${numbers})`,
  };
}
