import { undistort, type Camera } from "./camera";

const STEPS = 4096;

/**
 * Takes a pixel to focal-normalised coordinates without distortion and writes them into `out[0]`, `out[1]`.
 * The factor depends on the radius alone, so it is worked out once for 4096 radii: the iteration of `undistort` for
 * every ray cost more than following the ray.
 */
export function createUndistorter(camera: Camera): (px: number, py: number, out: Float64Array) => void {
  const { focalPx, centrePx, widthPx, heightPx } = camera;
  const [cx, cy] = centrePx;
  const most = ((widthPx / 2 / focalPx) ** 2 + (heightPx / 2 / focalPx) ** 2) * 1.01;
  const factor = Float64Array.from({ length: STEPS + 2 }, (_, i) => {
    const radius = Math.sqrt((i / STEPS) * most);
    return i === 0 ? 1 : undistort(camera, cx + radius * focalPx, cy)[0] / radius;
  });
  return (px, py, out) => {
    const x = (px - cx) / focalPx;
    const y = (py - cy) / focalPx;
    const at = Math.min(STEPS, ((x * x + y * y) / most) * STEPS);
    const i = at | 0;
    const k = factor[i]! + (factor[i + 1]! - factor[i]!) * (at - i);
    out[0] = x * k;
    out[1] = y * k;
  };
}
