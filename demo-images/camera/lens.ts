import { createKernels, gather, type KernelOf } from "./blur";
import type { Development } from "./development";
import type { Exposure } from "./expose";

/** Nothing is blurred more than this by being out of focus, px. */
const MOST_DEFOCUS_PX = 5;

/** Sigma at a pixel: the lens, and how far the surface is off the focus: it grows with |1/z - 1/zf|. */
function createSigma(d: Development, fixedPx: number): (depthMm: number) => number {
  const fixed = fixedPx * fixedPx;
  const focus = 1 / d.focusMm;
  return (depthMm) => {
    const off = Math.min(MOST_DEFOCUS_PX, d.defocusPxMm * Math.abs(1 / depthMm - focus));
    return Math.sqrt(fixed + off * off);
  };
}

/**
 * Blurs rows `from` to `to` along themselves, in place: lens, depth of field and motion in one pass, because Gaussians
 * one after the other are one Gaussian. Every pixel gathers with its own sigma, so that no blurred copy is kept.
 */
export function blurAcross(exposure: Exposure, d: Development, from: number, to: number): void {
  const { rgb, depth } = exposure;
  const width = d.widthPx;
  const kernelOf: KernelOf = createKernels();
  const sigmaAt = createSigma(d, Math.hypot(d.lensBlurPx, 0.4 * d.motionPx));
  const line = new Float32Array(3 * width);
  for (let y = from; y < to; y++) {
    const base = y * width;
    line.set(rgb.subarray(3 * base, 3 * (base + width)));
    for (let x = 0; x < width; x++) {
      const weights = kernelOf(sigmaAt(depth[base + x]!));
      if (weights !== null) gather(line, 3 * x, 3, -x, width - 1 - x, weights, rgb, 3 * (base + x));
    }
  }
}

/** Reads a row blurred down the columns; call it only once all rows it reaches are blurred along themselves. */
export function createBlurDown(exposure: Exposure, d: Development): (y: number, out: Float32Array) => void {
  const { rgb, depth } = exposure;
  const { widthPx: width, heightPx: height } = d;
  const kernelOf: KernelOf = createKernels();
  const sigmaAt = createSigma(d, d.lensBlurPx);
  return (y, out) => {
    const base = y * width;
    out.set(rgb.subarray(3 * base, 3 * (base + width)));
    for (let x = 0; x < width; x++) {
      const weights = kernelOf(sigmaAt(depth[base + x]!));
      if (weights !== null) gather(rgb, 3 * (base + x), 3 * width, -y, height - 1 - y, weights, out, 3 * x);
    }
  };
}
