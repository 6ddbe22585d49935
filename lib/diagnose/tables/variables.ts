import type { CauseId } from "../cause-ids";

/**
 * Causes that exclude each other share a variable; its further state is "in order". Everything else stands alone.
 */
export const exclusiveCauses: readonly (readonly CauseId[])[] = [
  ["ctwd-long", "ctwd-short"],
  ["travel-fast", "travel-slow"],
  ["drag-excess", "push-on-slag", "push-excess"],
  ["volt-high", "volt-low"],
  ["arc-long", "arc-short"],
  ["wfs-high", "wfs-low"],
  ["gas-low", "gas-high"],
  ["gap", "groove-tight"],
  ["base-cold-thick", "thin-base"],
];
