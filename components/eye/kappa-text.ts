import type { AttributeStudy } from "@/lib/eye";

type Kappa = NonNullable<AttributeStudy["together"]>;

/** "0.86 (0.77 to 0.95)"; in words where there is none. */
export function kappaText({ value, low, high }: Kappa): string {
  if (value === null) return "none: one answer only";
  const ends = low === null || high === null ? "" : ` (${low.toFixed(2)} to ${high.toFixed(2)})`;
  return `${value.toFixed(2)}${ends}`;
}
