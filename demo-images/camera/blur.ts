/** Gaussian weights for a sigma in pixels; null where the blur is too small to see. */
export type KernelOf = (sigmaPx: number) => Float32Array | null;

const STEPS_PER_PX = 16;
const LEAST_SIGMA_PX = 0.15;

/** Kernels in steps of a sixteenth of a pixel, each made when it is first asked for. */
export function createKernels(): KernelOf {
  const made: Float32Array[] = [];
  return (sigmaPx) => {
    if (sigmaPx < LEAST_SIGMA_PX) return null;
    const at = Math.round(sigmaPx * STEPS_PER_PX);
    return (made[at] ??= gaussian(at / STEPS_PER_PX));
  };
}

function gaussian(sigma: number): Float32Array {
  const reach = Math.ceil(2.6 * sigma);
  const weights = Float64Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp((-0.5 * (i - reach) ** 2) / (sigma * sigma)),
  );
  const sum = weights.reduce((total, w) => total + w, 0);
  return Float32Array.from(weights, (w) => w / sum);
}

/**
 * Weighted sum of RGB triples `step` apart about the one at `k`, written to `out` at `to`; taps beyond `least` and `most`
 * triples away are held at the border.
 */
export function gather(
  rgb: Float32Array,
  k: number,
  step: number,
  least: number,
  most: number,
  weights: Float32Array,
  out: Float32Array,
  to: number,
): void {
  const reach = (weights.length - 1) >> 1;
  let r = 0;
  let g = 0;
  let b = 0;
  for (let q = -reach; q <= reach; q++) {
    const at = k + step * (q < least ? least : q > most ? most : q);
    const w = weights[q + reach]!;
    r += w * rgb[at]!;
    g += w * rgb[at + 1]!;
    b += w * rgb[at + 2]!;
  }
  out[to] = r;
  out[to + 1] = g;
  out[to + 2] = b;
}

/** The same Gaussian over a whole small picture, in place. */
export function blurEvenly(rgb: Float32Array, width: number, height: number, sigmaPx: number): void {
  const weights = createKernels()(sigmaPx);
  if (weights === null) return;
  const across = new Float32Array(rgb.length);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const k = 3 * (y * width + x);
      gather(rgb, k, 3, -x, width - 1 - x, weights, across, k);
    }
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const k = 3 * (y * width + x);
      gather(across, k, 3 * width, -y, height - 1 - y, weights, rgb, k);
    }
}
