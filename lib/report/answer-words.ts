import {
  basisOf,
  type Basis,
  type Change,
  type DiagnoseInput,
  type Diagnosis,
  type WhyItem,
} from "@/lib/diagnose";
import type { UnitPreferences } from "@/lib/units";
import { changeText } from "./amount-text";
import { basisWords } from "./certainty-words";
import { expectWords } from "./expect-words";
import { reasonLine } from "./reasons";

/** The answer in words, the same on the screen, on the sheet and at the bench. */
export interface AnswerWords {
  /** What to do: "Shorten the distance from tip to work." */
  readonly sentence: string;
  /** How far: "Tip to work from 25 mm down to 19 mm"; empty where there is nothing to turn. */
  readonly step: string;
  /** Because of what, and how sure that is. */
  readonly cause: string;
  readonly sure: string;
  /** The strongest one or two, a sentence each. */
  readonly reasons: readonly string[];
  /** What to expect; empty where nothing can be said. */
  readonly expect: string;
}

const MOST_REASONS = 2;

/** @param change One of the diagnosis' own. */
export function answerWords(
  { evidence, diagnosis }: { readonly evidence: DiagnoseInput; readonly diagnosis: Diagnosis },
  change: Change,
  units: UnitPreferences,
): AnswerWords {
  const cause = diagnosis.causes.find(({ id }) => id === change.causeId);
  const basis = basisOf(evidence, diagnosis, change.causeId);
  const reasons = strongest(basis, diagnosis, cause?.why ?? [], change.causeId, units);
  return {
    sentence: change.sentence,
    step: changeText(change, units),
    cause: cause?.name ?? "",
    sure: basisWords[basis],
    reasons: reasons.length > 0 ? reasons : cause ? [cause.sentence] : [],
    expect: expectWords(change, evidence, diagnosis, units),
  };
}

/** What the record or a person found comes first; a mark beside it says what it did. */
function strongest(
  basis: Basis,
  { contradictions }: Diagnosis,
  why: readonly WhyItem[],
  causeId: Change["causeId"],
  units: UnitPreferences,
): readonly string[] {
  const speaking = why.filter(({ direction }) => direction === "for");
  const line = (item: Pick<WhyItem, "sentence" | "amounts">) => reasonLine(item, units);
  const marks = speaking.filter(({ kind }) => kind === "mark").map(line);
  const first =
    basis === "record"
      ? contradictions.filter((one) => one.causeId === causeId).map(line)
      : basis === "found"
        ? speaking.filter(({ kind }) => kind === "answer").map(line)
        : null;
  const all = first === null ? speaking.map(line) : [...first.slice(0, 1), ...marks];
  return [...new Set(all)].slice(0, MOST_REASONS);
}

/** "Because of travel too fast: likely." */
export const becauseLine = ({ cause, sure }: Pick<AnswerWords, "cause" | "sure">): string =>
  `Because of: ${cause} (${sure}).`;

export const expectLine = ({ expect }: Pick<AnswerWords, "expect">): string =>
  expect === "" ? "" : `Expect: ${expect}.`;
