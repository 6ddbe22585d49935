/** Gaussian blur of interleaved RGB, in place, separable, clamped at the border. `sigmaPx` may differ by axis. */
export function blurRgb(
  rgb: Float32Array,
  width: number,
  height: number,
  sigmaX: number,
  sigmaY = sigmaX,
): void {
  const line = new Float32Array(3 * Math.max(width, height));
  if (sigmaX > 0.15) blurLines(rgb, line, height, width * 3, width, 3, kernel(sigmaX));
  if (sigmaY > 0.15) blurLines(rgb, line, width, 3, height, width * 3, kernel(sigmaY));
}

function kernel(sigma: number): Float32Array {
  const reach = Math.ceil(2.6 * sigma);
  const weights = new Float32Array(2 * reach + 1);
  let sum = 0;
  for (let i = -reach; i <= reach; i++)
    sum += weights[i + reach] = Math.exp((-0.5 * i * i) / (sigma * sigma));
  return weights.map((w) => w / sum);
}

function blurLines(
  rgb: Float32Array,
  line: Float32Array,
  lines: number,
  stride: number,
  length: number,
  step: number,
  weights: Float32Array,
): void {
  const reach = (weights.length - 1) / 2;
  for (let n = 0; n < lines; n++) {
    const base = n * stride;
    for (let i = 0; i < length; i++) {
      const k = base + i * step;
      line[3 * i] = rgb[k]!;
      line[3 * i + 1] = rgb[k + 1]!;
      line[3 * i + 2] = rgb[k + 2]!;
    }
    for (let i = 0; i < length; i++) {
      let r = 0;
      let g = 0;
      let b = 0;
      for (let q = -reach; q <= reach; q++) {
        const at = 3 * Math.min(length - 1, Math.max(0, i + q));
        const w = weights[q + reach]!;
        r += w * line[at]!;
        g += w * line[at + 1]!;
        b += w * line[at + 2]!;
      }
      const k = base + i * step;
      rgb[k] = r;
      rgb[k + 1] = g;
      rgb[k + 2] = b;
    }
  }
}

/** Blur by fields of depth: sigma in pixels grows with |1/z - 1/zf|; three sharpness levels are mixed. */
export function blurByDepth(
  rgb: Float32Array,
  depth: Float32Array,
  width: number,
  height: number,
  focusMm: number,
  strengthPxMm: number,
): void {
  const levels = [1.1, 2.4, 5].map((sigma) => {
    const copy = rgb.slice();
    blurRgb(copy, width, height, sigma);
    return { sigma, copy };
  });
  for (let k = 0; k < depth.length; k++) {
    const sigma = Math.min(5, strengthPxMm * Math.abs(1 / depth[k]! - 1 / focusMm));
    if (sigma < 0.2) continue;
    let lowSigma = 0;
    let low = rgb;
    let high = levels[0]!;
    for (const level of levels) {
      high = level;
      if (sigma <= level.sigma) break;
      lowSigma = level.sigma;
      low = level.copy;
    }
    const t = Math.min(1, (sigma - lowSigma) / (high.sigma - lowSigma));
    for (let c = 3 * k; c < 3 * k + 3; c++) rgb[c] = low[c]! + (high.copy[c]! - low[c]!) * t;
  }
}
