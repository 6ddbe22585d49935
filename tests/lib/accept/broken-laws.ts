import type { JudgeInput, Verdict } from "@/lib/accept";
import { figuresGiven } from "@/lib/accept/unused-readings";
import { dice, randomWeld, shuffled, type Dice } from "./random-weld";
import { inInches, lessKnown, worseThan } from "./weld-changes";

export type Judge = (input: JudgeInput) => Verdict;

export interface LawsFound {
  readonly broken: readonly string[];
  readonly counts: Readonly<Record<string, number>>;
}

const rank = { reject: 0, "cannot-say": 1, accept: 2 } as const;

/**
 * Four laws on `welds` seeded welds, over every set, kind of weld, imperfection, setting and unit system:
 * less knowledge never accepts; worse never helps; the same weld has the same verdict; no reading is silent, and
 * contradictory ones accept nothing. It ends early where enough was found.
 */
export function brokenLaws(
  judge: Judge,
  welds: number,
  first = 1,
  isEnough: (broken: readonly string[]) => boolean = () => false,
): LawsFound {
  const broken: string[] = [];
  const counts: Record<string, number> = {};
  const count = (what: string): unknown => (counts[what] = (counts[what] ?? 0) + 1);
  for (let seed = first; seed < first + welds && !isEnough(broken); seed++) {
    const roll = dice(seed);
    const weld = anyKnowledge(roll, withoutFalseTicks(judge, randomWeld(roll)));
    const verdict = judge(weld);
    count(verdict.verdict);
    const say = (what: string): unknown =>
      broken.push(`${seed} ${weld.criteriaId} ${weld.weld.kind}: ${what}`);
    const silent = silentFigures(weld, verdict);
    if (silent.length > 0) say(`${silent.join(", ")} silent`);
    const same = judge(inInches({ ...weld, observations: shuffled(roll, weld.observations) }));
    if (same.verdict !== verdict.verdict)
      say(`${verdict.verdict}, in another order and in inches ${same.verdict}`);
    if (verdict.contradictions.length > 0) {
      count("contradictory");
      if (verdict.verdict === "accept") say("accepted although contradictory");
      continue;
    }
    const less = lessKnown(roll, weld, soreFigures(verdict));
    if (less !== null && judge(less.weld).verdict === "accept" && verdict.verdict !== "accept")
      say(`${verdict.verdict} to accept without ${less.what}`);
    const worse = worseThan(roll, weld);
    // Saying how long the weld is under size, or finding what nobody had looked for, is an answer to what was missing.
    const isAnswer =
      (worse.what.endsWith("undersized") && asksForUndersize(verdict)) ||
      verdict.notLookedFor.some((id) => worse.what === `one more ${id}`);
    const after = judge(worse.weld).verdict;
    if (rank[after] > rank[verdict.verdict] && !isAnswer)
      say(`${verdict.verdict} to ${after} with ${worse.what}`);
  }
  return { broken, counts };
}

const asksForUndersize = (verdict: Verdict): boolean =>
  verdict.missing.some(({ quantity }) => quantity === "undersize-length") ||
  verdict.rows.some((row) => row.missing.some(({ quantity }) => quantity === "undersize-length"));

/** What the clauses that are not met rest on, and the facts of the weld they most often hang on. */
function soreFigures({ rows }: Verdict): readonly string[] {
  const worst = rows.filter(({ result }) => result === "fails" || result === "open");
  if (worst.length === 0) return [];
  return [...new Set([...worst.flatMap((row) => row.figuresUsed), "thicknessMm", "lengthMm"])].filter(
    (figure) => !figure.includes("poreCount") && figure !== "legMm",
  );
}

/** As it is, or with some of it not known to begin with. */
function anyKnowledge(roll: Dice, weld: JudgeInput): JudgeInput {
  return roll.maybe(0.4) ? (lessKnown(roll, weld)?.weld ?? weld) : weld;
}

/** Ticks that a reading gives the lie are taken back: the weld then says one thing. */
function withoutFalseTicks(judge: Judge, weld: JudgeInput): JudgeInput {
  const lies = new Set(
    judge(weld)
      .contradictions.filter(({ code }) => code === "ticked-absent")
      .flatMap(({ between }) => between),
  );
  return lies.size === 0 ? weld : { ...weld, lookedFor: weld.lookedFor.filter((id) => !lies.has(id)) };
}

function silentFigures(weld: JudgeInput, verdict: Verdict): readonly string[] {
  const named = new Set([
    ...verdict.rows.flatMap((row) => row.figuresUsed),
    ...verdict.unused.map(({ figure }) => figure),
  ]);
  return figuresGiven(weld).filter((figure) => !named.has(figure));
}
