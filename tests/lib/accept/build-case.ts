import type { CriteriaSummary } from "@/lib/accept";

/**
 * Cases are written as an inspector writes: "5/16 in", "1.5 mm". Readings of imperfections and of the bead become gauge
 * readings, facts of the weld become numbers, and "all" in `lookedFor` everything the set asks for.
 */
export function buildCase(
  given: Record<string, unknown>,
  sets: readonly CriteriaSummary[],
): Record<string, unknown> {
  const set = sets.find(({ id }) => id === given["criteriaId"]);
  const observations = (given["observations"] ?? []) as Record<string, unknown>[];
  return {
    ...given,
    weld: mapped(given["weld"] as object, (value) => lengthOf(value)),
    observations: observations.map((one) =>
      mapped(one, (value, key) =>
        key === "alongMm" ? (value as unknown[]).map(lengthOf) : key.endsWith("Mm") ? gauge(value) : value,
      ),
    ),
    beadReadings: mapped((given["beadReadings"] ?? {}) as object, gauge),
    lookedFor: given["lookedFor"] === "all" ? (set?.imperfections ?? []) : (given["lookedFor"] ?? []),
  };
}

function mapped(object: object, change: (value: unknown, key: string) => unknown): Record<string, unknown> {
  return Object.fromEntries(Object.entries(object).map(([key, value]) => [key, change(value, key)]));
}

function lengthOf(value: unknown): unknown {
  return typeof value === "string" && /\d+ ?(mm|in)$/.test(value) ? millimetres(value) : value;
}

/** A reading taken as it stands: the cases are about the rule, not about the gauge. */
function gauge(value: unknown): unknown {
  const length = lengthOf(value);
  return typeof length === "number"
    ? { unit: "mm", value: length, expandedUncertainty: 0.1, source: "gauge", instrument: "case" }
    : value;
}

/** "5/16 in", "0.6 in", "3 mm". */
export function millimetres(text: string): number {
  const match = /^(-?[\d.]+)(?:\/(\d+))? (mm|in)$/.exec(text);
  if (!match) throw new Error(`not a length: ${text}`);
  const number = Number(match[1]) / Number(match[2] ?? 1);
  return match[3] === "in" ? number * 25.4 : number;
}
