import type { RunSetup } from "./run-setup";

/**
 * Whether gravity pulls the pool out of the joint: vertical and overhead. Horizontal fillets are not; an unknown position
 * is not.
 */
export function isPositionOut({ position }: Pick<RunSetup, "position">): boolean {
  return position === "vertical" || position === "overhead";
}
