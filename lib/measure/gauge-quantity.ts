import type { GaugeQuantity, GaugeReading } from "@/lib/marks";
import type { Quantity } from "./types";

/**
 * A reading with an instrument as a quantity. Its resolution r is a uniform error of half-width r/2, so u = r / sqrt(12)
 * (JCGM 100:2008, F.2.2.1). A study of the gauge holds what hand and gauge add, and the step with it: then its u and k
 * count, unless the step alone is larger (ISO 22514-7 takes the larger of the two likewise; from memory).
 */
export function gaugeQuantity(reading: {
  readonly valueMm: number;
  readonly resolutionMm: number;
  readonly instrument: string;
  readonly study?: GaugeReading["study"] | undefined;
}): Quantity {
  const step = reading.resolutionMm / Math.sqrt(12);
  const { study } = reading;
  const studied = study !== undefined && study.k * study.u > 2 * step ? study : null;
  // Widened for what so few readings say of a spread, so that sums of such figures keep it.
  const u = studied ? (studied.k * studied.u) / 2 : step;
  return {
    unit: "mm",
    value: reading.valueMm,
    expandedUncertainty: 2 * u,
    source: "gauge",
    budget: [{ part: studied ? "gauge-study" : "resolution", u }],
    instrument: reading.instrument,
  };
}

/** Of several readings of one quantity the worst counts: the largest. Null when there is none. */
export function worstGaugeReading(
  readings: readonly GaugeReading[],
  quantity: GaugeQuantity,
): Quantity | null {
  const worst = readings
    .filter((reading) => reading.quantity === quantity)
    .sort((a, b) => b.valueMm - a.valueMm)[0];
  return worst === undefined ? null : gaugeQuantity(worst);
}

/** A size on a drawing or a setting: taken as it stands. */
export function statedQuantity(valueMm: number): Quantity {
  return { unit: "mm", value: valueMm, expandedUncertainty: 0, source: "stated", budget: [] };
}
