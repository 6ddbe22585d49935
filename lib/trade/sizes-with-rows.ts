import type { ElectrodeClass } from "./electrode-class";
import { windowRows } from "./tables/window-rows";
import { wireSizePairs } from "./tables/wire-size-pairs";

/** The stored sizes, mm, for which some row gives the feed of this wire; ascending. Empty for rods. */
export function sizesWithRows({ id, process }: Pick<ElectrodeClass, "id" | "process">): readonly number[] {
  if (process === "SMAW" || process === "GTAW") return [];
  const inches = windowRows.wire
    .filter(({ classes, wireFeedIpm }) => wireFeedIpm !== undefined && classes.includes(id))
    .flatMap(({ diametersIn }) => diametersIn);
  return [...new Set(inches)].flatMap(storedMm).sort((a, b) => a - b);
}

/** An inch size under the metric name it is sold by; of two names, the one that wire is drawn to. */
function storedMm(inches: number): readonly number[] {
  const pairs = wireSizePairs.filter((pair) => Math.abs(pair.inches - inches) < 0.001);
  const sold = pairs.find(({ soldMetric }) => soldMetric) ?? pairs[0];
  return sold === undefined ? [] : [sold.nominalMm];
}
