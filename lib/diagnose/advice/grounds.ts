import type { CauseId } from "../cause-ids";
import type { DiagnoseInput } from "../input";
import { questions } from "../tables/questions";
import type { Contradiction } from "../types";

/**
 * What a change rests on. "record": the record contradicts itself, and this cause is what is wrong in it. "answer":
 * somebody looked and found the fault. "evidence": marks and readings, weighed.
 */
export type Ground = "record" | "answer" | "evidence";

/** An answer is a finding of the fault when it is this much likelier with the fault than without, and of its absence. */
const FOUND = 4;

export interface Grounds {
  readonly recorded: ReadonlySet<CauseId>;
  readonly answered: ReadonlySet<CauseId>;
  /** Looked at and in order, or done already: never proposed. */
  readonly cleared: ReadonlySet<CauseId>;
}

/** What the record and the answers settle about single causes. */
export function groundsOf(
  { answers }: DiagnoseInput,
  contradictions: readonly Contradiction[],
  clearedByRecord: readonly CauseId[],
): Grounds {
  const recorded = new Set(contradictions.flatMap(({ causeId }) => (causeId === null ? [] : [causeId])));
  const asked = questions.flatMap(({ id, causes, answers: possible }) => {
    const answer = possible.find((one) => one.id === answers[id]);
    return answer === undefined
      ? []
      : causes.map((cause, i) => [cause, ratio(answer.likelihood, i)] as const);
  });
  const answered = new Set(asked.filter(([, r]) => r >= FOUND).map(([cause]) => cause));
  const cleared = [...asked.filter(([, r]) => r <= 1 / FOUND).map(([cause]) => cause), ...clearedByRecord];
  return {
    recorded,
    answered,
    // Two answers, or an answer and the record, may disagree: then the fault stands, and somebody looks again.
    cleared: new Set(cleared.filter((cause) => !recorded.has(cause) && !answered.has(cause))),
  };
}

/** P(answer | this cause) over P(answer | in order). */
const ratio = (likelihood: readonly number[], cause: number): number =>
  likelihood[cause + 1]! / likelihood[0]!;

export function groundOf(cause: CauseId, { recorded, answered }: Grounds): Ground {
  return recorded.has(cause) ? "record" : answered.has(cause) ? "answer" : "evidence";
}
