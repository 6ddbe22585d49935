import { lengthText } from "@/lib/report";
import { inch, metric } from "@/lib/units";

/** In what units a record is told: one system, or metric first with inch beside it. */
export type PaperUnits = "both" | "metric" | "inch";

/** A text that is there in both systems; one alone where both say the same. */
export function bothText(
  { metric: mm, inch: inches }: { readonly metric: string; readonly inch: string },
  units: PaperUnits = "both",
): string {
  if (mm === inches || inches === "") return mm;
  if (units !== "both") return units === "metric" ? mm : inches;
  return `${mm} (${inches})`;
}

/** A length, mm: "600 mm", "23.622 in" or "600 mm (23.622 in)". */
export const lengthIn = (units: PaperUnits, mm: number): string =>
  bothText({ metric: lengthText(mm, metric), inch: lengthText(mm, inch) }, units);
