import type { Matrix3, Pixel, RenderedScene } from "@/demo-images";

/** Grey level at a pixel, 0 to 255. */
export function grey(picture: RenderedScene, x: number, y: number): number {
  const k = 3 * (Math.round(y) * picture.width + Math.round(x));
  return 0.3 * picture.rgb[k]! + 0.59 * picture.rgb[k + 1]! + 0.11 * picture.rgb[k + 2]!;
}

/** Bilinear grey at continuous picture coordinates (pixel middles at .5). */
export function greyAt(picture: RenderedScene, x: number, y: number): number {
  const fx = Math.min(picture.width - 1.01, Math.max(0, x - 0.5));
  const fy = Math.min(picture.height - 1.01, Math.max(0, y - 0.5));
  const i = Math.floor(fx);
  const j = Math.floor(fy);
  const u = fx - i;
  const v = fy - j;
  return (
    grey(picture, i, j) * (1 - u) * (1 - v) +
    grey(picture, i + 1, j) * u * (1 - v) +
    grey(picture, i, j + 1) * (1 - u) * v +
    grey(picture, i + 1, j + 1) * u * v
  );
}

/** (u, v, 1) through a row-major homography. */
export function throughHomography(h: Matrix3, u: number, v: number): Pixel {
  const w = h[6] * u + h[7] * v + h[8];
  return [(h[0] * u + h[1] * v + h[2]) / w, (h[3] * u + h[4] * v + h[5]) / w];
}

/** Where a profile of samples crosses half-way between its ends, as an index with a fraction; NaN if it never does. */
export function halfCrossing(profile: readonly number[]): number {
  const level = (profile[0]! + profile[profile.length - 1]!) / 2;
  for (let i = 0; i + 1 < profile.length; i++) {
    const a = profile[i]! - level;
    const b = profile[i + 1]! - level;
    if (a * b <= 0 && a !== b) return i + a / (a - b);
  }
  return NaN;
}

/** Pixels inside a closed outline (even-odd rule), as pixel middles. */
export function pixelsInside(outline: readonly Pixel[]): Pixel[] {
  const xs = outline.map((p) => p[0]);
  const ys = outline.map((p) => p[1]);
  const found: Pixel[] = [];
  for (let y = Math.floor(Math.min(...ys)) + 0.5; y < Math.max(...ys); y++) {
    for (let x = Math.floor(Math.min(...xs)) + 0.5; x < Math.max(...xs); x++) {
      let inside = false;
      outline.forEach(([ax, ay], i) => {
        const [bx, by] = outline[(i + 1) % outline.length]!;
        if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside;
      });
      if (inside) found.push([x, y]);
    }
  }
  return found;
}

export function polygonArea(outline: readonly Pixel[]): number {
  return (
    Math.abs(
      outline.reduce((sum, [x, y], i) => {
        const [nx, ny] = outline[(i + 1) % outline.length]!;
        return sum + x * ny - nx * y;
      }, 0),
    ) / 2
  );
}

/** Number of pixels darker than `level` that hang together with `from` inside the closed outline `within`. */
export function darkRegion(
  picture: RenderedScene,
  from: Pixel,
  level: number,
  within: readonly Pixel[],
): number {
  const allowed = new Set(pixelsInside(within).map(([x, y]) => `${x},${y}`));
  const start: Pixel = [Math.floor(from[0]) + 0.5, Math.floor(from[1]) + 0.5];
  const queue: Pixel[] = [start];
  const seen = new Set([start.join()]);
  let count = 0;
  for (let next = queue.pop(); next !== undefined; next = queue.pop()) {
    const [x, y] = next;
    if (!allowed.has(next.join()) || greyAt(picture, x, y) >= level) continue;
    count++;
    for (const beside of [
      [x + 1, y],
      [x - 1, y],
      [x, y + 1],
      [x, y - 1],
    ] as const) {
      if (seen.has(beside.join())) continue;
      seen.add(beside.join());
      queue.push(beside);
    }
  }
  return count;
}

export const distance = (a: Pixel, b: Pixel): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** Samples of an edge profile per pixel. */
export const STEPS_PER_PX = 10;

/**
 * Light across the straight line from `a` to `b`, from `reachPx` inside it to as much outside, mean over the shares given
 * of its length. Light, not code values: the sRGB transfer (IEC 61966-2-1) is undone. `outward` is any point on the outer
 * side of the line.
 */
export function edgeProfile(
  picture: RenderedScene,
  a: Pixel,
  b: Pixel,
  outward: Pixel,
  shares: readonly number[],
  reachPx: number,
): number[] {
  const length = distance(a, b);
  let [nx, ny] = [-(b[1] - a[1]) / length, (b[0] - a[0]) / length];
  if ((outward[0] - a[0]) * nx + (outward[1] - a[1]) * ny < 0) [nx, ny] = [-nx, -ny];
  const steps = reachPx * STEPS_PER_PX;
  return Array.from({ length: 2 * steps + 1 }, (_, i) => {
    const t = (i - steps) / STEPS_PER_PX;
    const light = shares.map((share) => {
      const [x, y] = [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
      return (greyAt(picture, x + nx * t, y + ny * t) / 255) ** 2.2;
    });
    return light.reduce((sum, v) => sum + v, 0) / light.length;
  });
}
