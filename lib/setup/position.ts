import type { RunSetup } from "./run-setup";

/**
 * Whether gravity pulls the pool out of the joint: vertical and overhead. Horizontal fillets are not; an unknown position
 * is not.
 */
export function isPositionOut({ position }: Pick<RunSetup, "position">): boolean {
  return position === "vertical" || position === "overhead";
}

/** Run uphill, or vertical without saying which way: uphill is the usual way and the one where the pool piles up. */
export function isVerticalUp({ position, progression }: Pick<RunSetup, "position" | "progression">): boolean {
  return position === "vertical" && progression !== "down";
}
