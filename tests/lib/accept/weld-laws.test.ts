import { describe, expect, it } from "vitest";
import type { JudgeInput, Verdict } from "@/lib/accept";
import { judgeParsed } from "@/lib/accept/judge";
import { figuresGiven } from "@/lib/accept/unused-readings";
import { dice, randomWeld } from "./random-weld";
import { lessKnown, worseThan } from "./weld-changes";

/** Laws of our own over every set, kind of weld, imperfection, setting and unit system; no published source. */
const WELDS = 20_000;

function verdictOf(input: JudgeInput): Verdict {
  const result = judgeParsed(input);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

/** Ticks that a reading gives the lie are taken back: the weld then says one thing. */
function withoutFalseTicks(weld: JudgeInput): JudgeInput {
  const false_ = new Set(
    verdictOf(weld)
      .contradictions.filter(({ code }) => code === "ticked-absent")
      .flatMap(({ between }) => between),
  );
  return false_.size === 0 ? weld : { ...weld, lookedFor: weld.lookedFor.filter((id) => !false_.has(id)) };
}

const rank = { reject: 0, "cannot-say": 1, accept: 2 } as const;

describe(`${WELDS} welds`, () => {
  it("less knowledge never accepts, worse never helps, no reading is silent", () => {
    const counts = { accept: 0, reject: 0, "cannot-say": 0, contradictory: 0, lessKnown: 0, worse: 0 };
    const broken: string[] = [];
    for (let seed = 1; seed <= WELDS; seed++) {
      const roll = dice(seed);
      const weld = withoutFalseTicks(randomWeld(roll));
      const verdict = verdictOf(weld);
      counts[verdict.verdict]++;
      const named = new Set([
        ...verdict.rows.flatMap((row) => row.figuresUsed),
        ...verdict.unused.map(({ figure }) => figure),
      ]);
      const silent = figuresGiven(weld).filter((figure) => !named.has(figure));
      if (silent.length > 0) broken.push(`${seed}: ${silent.join(", ")} silent`);
      if (verdict.contradictions.length > 0) {
        counts.contradictory++;
        if (verdict.verdict === "accept") broken.push(`${seed}: accepted although contradictory`);
        continue;
      }
      const less = lessKnown(roll, weld);
      if (less !== null) {
        counts.lessKnown++;
        const after = verdictOf(less.weld);
        if (after.verdict === "accept" && verdict.verdict !== "accept")
          broken.push(`${seed} ${weld.criteriaId} ${weld.weld.kind}: ${verdict.verdict} to accept without ${less.what}`);
      }
      const worse = worseThan(roll, weld);
      counts.worse++;
      const after = verdictOf(worse.weld);
      // Saying how long the weld is under size, where that is what is missing, is knowledge and no fault.
      const asked = verdict.missing.some(({ quantity }) => quantity === "undersize-length");
      if (rank[after.verdict] > rank[verdict.verdict] && !(asked && worse.what.endsWith("undersized")))
        broken.push(`${seed} ${weld.criteriaId} ${weld.weld.kind}: ${verdict.verdict} to ${after.verdict} with ${worse.what}`);
    }
    console.log(JSON.stringify(counts));
    expect(broken.slice(0, 20)).toEqual([]);
  }, 300_000);
});
