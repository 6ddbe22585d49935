import { normalDensity, normalShare } from "@/lib/numeric";
import type { Believed } from "./gaussian-process";
import type { Aim } from "./trial";

/** How far a value is from what is wanted: the smaller the better. */
export function loss({ want, target }: Pick<Aim, "want" | "target">, value: number): number {
  if (want === "target") return Math.abs(value - target!);
  return want === "most" ? -value : value;
}

/** E[max(0, z - c)] of a normal z. */
const above = ({ mean, sd }: Believed, c: number): number => {
  if (sd === 0) return Math.max(0, mean - c);
  const u = (mean - c) / sd;
  return (mean - c) * normalShare(u) + sd * normalDensity(u);
};

/**
 * By how much a point may be expected to beat the best loss so far (Jones, Schonlau and Welch, Journal of Global
 * Optimization 13, 1998, eq. 15). For a target the improvement is a tent over it, which is three such terms.
 */
export function expectedImprovement(
  aim: Pick<Aim, "want" | "target">,
  believed: Believed,
  bestLoss: number,
): number {
  if (aim.want === "most") return above(believed, -bestLoss);
  if (aim.want === "least") return above({ mean: -believed.mean, sd: believed.sd }, -bestLoss);
  const t = aim.target!;
  const b = Math.max(0, bestLoss);
  // Three large terms that cancel: never below nought.
  return Math.max(0, above(believed, t - b) - 2 * above(believed, t) + above(believed, t + b));
}
