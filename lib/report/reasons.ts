import { needsCheck, type Source } from "@/lib/base";
import type { Amount, WhyItem } from "@/lib/diagnose";
import type { UnitPreferences } from "@/lib/units";
import { amountText } from "./amount-text";
import { confidenceWords } from "./words";

const MOST_FOR = 3;
const MOST_AGAINST = 2;

/** What speaks for and against a cause, strongest first: what is shown at once, and the rest, which is folded away. */
export interface Reasons {
  readonly speaksFor: readonly string[];
  readonly speaksAgainst: readonly string[];
  readonly restFor: readonly string[];
  readonly restAgainst: readonly string[];
}

export function reasonsOf(why: readonly WhyItem[], units: UnitPreferences): Reasons {
  const lines = (direction: WhyItem["direction"]) => [
    ...new Set(why.filter((item) => item.direction === direction).map((item) => reasonLine(item, units))),
  ];
  const [speaksFor, speaksAgainst] = [lines("for"), lines("against")];
  return {
    speaksFor: speaksFor.slice(0, MOST_FOR),
    speaksAgainst: speaksAgainst.slice(0, MOST_AGAINST),
    restFor: speaksFor.slice(MOST_FOR),
    restAgainst: speaksAgainst.slice(MOST_AGAINST),
  };
}

/** "Thick plate drinks the heat (plate 12 mm)." */
export function reasonLine(
  { sentence, amounts }: { readonly sentence: string; readonly amounts: readonly Amount[] },
  units: UnitPreferences,
): string {
  if (amounts.length === 0) return sentence;
  const figures = amounts.map((amount) => amountText(amount, units)).join(", ");
  return `${sentence.replace(/\.$/, "")} (${figures}).`;
}

/** Where it comes from, a line for each document, and for what rests on none: how far each is to be trusted. */
export function originLines(sources: readonly Source[]): readonly string[] {
  return [...new Set(sources.map(originLine))];
}

function originLine({ document, edition, clause, confidence }: Source): string {
  if (confidence === "own-estimate" || confidence === "common-practice") return sentenceOf(confidence);
  const where = [document, edition, clause].filter(Boolean).join(", ");
  return `${where}: ${confidenceWords[confidence]}`;
}

const sentenceOf = (confidence: "own-estimate" | "common-practice"): string =>
  confidenceWords[confidence].charAt(0).toUpperCase() + confidenceWords[confidence].slice(1);

/** Beside reasons on paper, where nothing can be unfolded. */
export const paperOrigin = (sources: readonly Source[]): string =>
  `Weights of published lists against what was marked and recorded; not frequencies.${sources.some(needsCheck) ? " Some are from memory or read in part: check your copy." : ""}`;
