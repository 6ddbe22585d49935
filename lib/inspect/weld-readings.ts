import type { BeadReading } from "@/lib/assess";
import type { BeadQuantity } from "@/lib/measure";
import { isFillet, type Joint } from "@/lib/trade";

/** What is read off a weld at the bench, in the order in which the gauges are taken up. */
export function quantitiesAtBench(joint: Joint | null): readonly BeadQuantity[] {
  return joint !== null && !isFillet(joint)
    ? ["reinforcement", "width", "misalignment", "toe-angle", "weld-length"]
    : ["leg-1", "leg-2", "throat", "convexity", "root-gap", "weld-length"];
}

/** The reading of a quantity that counts: the last. */
export const readingOf = (
  readings: readonly BeadReading[],
  quantity: BeadQuantity,
): BeadReading | undefined => readings.findLast((one) => one.quantity === quantity);

/** The readings with this one in the place of the last of its quantity; `reading` null takes that one off. */
export function withReading(
  readings: readonly BeadReading[],
  quantity: BeadQuantity,
  reading: BeadReading | null,
): readonly BeadReading[] {
  const at = readings.findLastIndex((one) => one.quantity === quantity);
  if (at < 0) return reading === null ? readings : [...readings, reading];
  return reading === null ? readings.toSpliced(at, 1) : readings.with(at, reading);
}
