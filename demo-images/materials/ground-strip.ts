import { noise2, smoothstep } from "../noise/noise";
import type { PlateLook } from "./plate-look";

/** Scratches of a disc about a centre far off: fine across its sweep, long along it; about [-1, 1]. */
function grindArc(x: number, s: number, seed: number, cx: number, cs: number): number {
  const r = Math.hypot(x - cx, s - cs);
  const a = Math.atan2(s - cs, x - cx);
  return 0.65 * noise2(a * 7, r * 5, seed) + 0.45 * noise2(a * 12, r * 13, seed + 1);
}

/** A disc grinder moved along by hand: each pass lays arcs over the last, whose slant changes with the wrist. */
export function grindPattern(x: number, s: number, seed: number): number {
  const first = grindArc(x, s, seed, 44, -78);
  const share = smoothstep(-0.18, 0.18, noise2(x * 0.05, s * 0.09, seed + 8));
  return share <= 0 ? first : first + (grindArc(x, s, seed + 40, -62, 92) - first) * share;
}

/** Share of the strip beside the joint that is ground to bright metal, 0 to 1; its scratches run out into the scale. */
export function groundShare({ seed, groundStripMm }: PlateLook, x: number, s: number): number {
  const out = Math.abs(s);
  if (groundStripMm <= 0 || out > groundStripMm + 5) return 0;
  if (out < groundStripMm - 4) return 1;
  const side = s > 0 ? 1.5 : 4.5;
  const strip =
    groundStripMm + 1.5 * noise2(x * 0.07, side, seed + 63) + 0.45 * noise2(x * 0.4, side, seed + 64);
  return smoothstep(-0.55, 0.55, strip - out + 0.5 * grindPattern(x, s, seed + 110));
}
