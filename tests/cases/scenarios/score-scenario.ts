import { proposal } from "@/lib/assess";
import { DiagnoseInputSchema, type Change, type Diagnosis } from "@/lib/diagnose";
import { diagnoseWith } from "@/lib/diagnose/diagnose";
import { presentTuning, type Tuning } from "@/lib/diagnose/tuning";
import type { Expectation, ExpectedChange, Scenario } from "./scenario";

/** What is judged of the advice, each by itself. */
export const groups = ["first", "change", "number", "danger", "flags", "cautions", "inspector"] as const;
export type Group = (typeof groups)[number];

/** How many of what was asked for were found. For "danger" what is counted are dangerous answers. */
export interface Count {
  readonly count: number;
  readonly of: number;
}
export type Marks = Readonly<Record<Group, Count>>;

export interface JudgedScenario {
  readonly id: string;
  readonly marks: Marks;
  /** Stated probability of the first cause, and whether it is a right one; null where the first place is not judged. */
  readonly first: { readonly probability: number; readonly right: boolean } | null;
  /** In one line, what was advised. */
  readonly answer: string;
}

const nothing: Count = { count: 0, of: 0 };
const one = (is: boolean): Count => ({ count: is ? 1 : 0, of: 1 });
const among = (wanted: readonly string[] = [], found: (what: string) => boolean): Count => ({
  count: wanted.filter(found).length,
  of: wanted.length,
});

export function scoreScenario(scenario: Scenario, tuning: Tuning = presentTuning): JudgedScenario {
  const result = diagnoseWith(DiagnoseInputSchema.parse(scenario.given), tuning);
  // No id and no reason: the line may be about a scenario that nobody is to look at.
  if (!result.ok) throw new Error("a scenario is not diagnosed; scenarios.test.ts says which");
  const { top } = scenario.expect;
  const leading = result.value.causes[0]!;
  return {
    id: scenario.id,
    marks: marksFor(scenario.expect, result.value),
    first: top === null ? null : { probability: leading.probability, right: top.includes(leading.id) },
    answer: answerOf(result.value),
  };
}

/** One diagnosis beside what an experienced welder would say. What is left out of the expectation is not judged. */
export function marksFor(expected: Expectation, diagnosis: Diagnosis): Marks {
  const { top, avoid, flags, cautions, inspector } = expected;
  const proposed = theOneChange(diagnosis);
  const early = inOrder(diagnosis).slice(0, 3);
  return {
    first: top === null ? nothing : one(top.includes(diagnosis.causes[0]!.id)),
    change: changeMark(expected, proposed),
    number: expected.change ? numberMark(expected.change, proposed) : nothing,
    danger: avoid === undefined ? nothing : one(early.some(({ causeId }) => avoid.includes(causeId))),
    flags: among(flags, (flag) => diagnosis.contradictions.some(({ code }) => code === flag)),
    cautions: among(cautions, (pattern) => says(diagnosis, new RegExp(pattern))),
    inspector: inspector ? one(stopped(diagnosis)) : nothing,
  };
}

/** An inspector comes first: nothing is proposed, and a caution says why. */
const stopped = ({ firstChange, cautions }: Diagnosis): boolean =>
  firstChange === null && cautions.some(({ level }) => level === "stop");

/** What is proposed as the one change; where an inspector comes first, what stands ready for afterwards. */
function theOneChange(diagnosis: Diagnosis): Change | null {
  return stopped(diagnosis) ? (diagnosis.nextChanges[0] ?? null) : (proposal(diagnosis)?.first ?? null);
}

/** All changes in order of trial, whether or not a screen would show them: a machine at the door is given all. */
const inOrder = ({ firstChange, nextChanges }: Diagnosis): readonly Change[] =>
  firstChange === null ? nextChanges : [firstChange, ...nextChanges];

function changeMark({ change, quiet }: Expectation, proposed: Change | null): Count {
  if (quiet || change === null) return one(proposed === null);
  return change === undefined ? nothing : one(proposed !== null && change.causes.includes(proposed.causeId));
}

/** The span belongs to the first of the causes, so another right change has no number to be judged by. */
function numberMark({ causes, lo, hi, toText }: ExpectedChange, proposed: Change | null): Count {
  if (proposed === null || proposed.causeId !== causes[0]) return nothing;
  if (toText !== undefined) return one(proposed.toText === toText);
  if (lo === undefined || hi === undefined) return nothing;
  const { toSi } = proposed;
  return one(toSi !== null && toSi >= lo && toSi <= hi);
}

const says = ({ cautions }: Diagnosis, pattern: RegExp): boolean =>
  cautions.some(({ code, sentence }) => pattern.test(code) || pattern.test(sentence.toLowerCase()));

function answerOf(diagnosis: Diagnosis): string {
  const causes = diagnosis.causes.slice(0, 3).map(({ id, probability }) => `${id} ${probability.toFixed(2)}`);
  const proposed = theOneChange(diagnosis);
  const to = proposed?.toText ?? proposed?.toSi?.toFixed(1);
  const next = inOrder(diagnosis).slice(1, 3);
  return [
    `causes ${causes.join(", ")}`,
    `change ${proposed === null ? "none" : proposed.causeId}${to === undefined ? "" : ` to ${to}`}`,
    `then ${next.map(({ causeId }) => causeId).join(", ") || "none"}`,
    `flags ${diagnosis.contradictions.map(({ code }) => code).join(", ") || "none"}`,
  ].join("; ");
}

/** Group by group over all of them: the only thing that leaves this file about scenarios that were kept back. */
export function totalsOf(judged: readonly JudgedScenario[]): Marks {
  const sum = (group: Group): Count => ({
    count: judged.reduce((n, { marks }) => n + marks[group].count, 0),
    of: judged.reduce((n, { marks }) => n + marks[group].of, 0),
  });
  return Object.fromEntries(groups.map((group) => [group, sum(group)])) as Record<Group, Count>;
}

/** In which groups something was missed, or something dangerous said. */
export function missedIn({ marks }: JudgedScenario): readonly Group[] {
  return groups.filter((group) =>
    group === "danger" ? marks.danger.count > 0 : marks[group].count < marks[group].of,
  );
}
