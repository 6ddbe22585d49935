import type { AttributeStudy } from "@/lib/eye";
import { formatQuantity } from "@/lib/units";

const text = (kappa: number): string => formatQuantity("kappa", kappa, "metric");

type Kappa = NonNullable<AttributeStudy["together"]>;

/** "0.86 (0.77 to 0.95)"; in words where there is none. */
export function kappaText({ value, low, high }: Kappa): string {
  if (value === null) return "none: one answer only";
  const ends = low === null || high === null ? "" : ` (${text(low)} to ${text(high)})`;
  return `${text(value)}${ends}`;
}
