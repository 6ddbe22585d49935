import { describe, expect, it } from "vitest";
import { bestSet } from "@/lib/diagnose/network/joint";
import type { Evidence, Network } from "@/lib/diagnose/network/types";
import { entropyBits } from "@/lib/numeric";
import { assignmentsOf, enumeratePosterior, logJoint } from "./enumerate";
import { infer } from "./infer";

const only = (present: number[], absent: number[] = []): Evidence => ({ present, absent, virtual: [] });
const yes = (variable: number) => ({ variable, likelihood: [0, 1] });
const no = (variable: number) => ({ variable, likelihood: [1, 0] });

/** Noisy-OR fever table: inhibitors cold 0.6, flu 0.2, malaria 0.1, no leak (Russell & Norvig, Artificial Intelligence; university slides after it). */
const fever: Network = {
  variables: [{ prior: [0.9, 0.1] }, { prior: [0.95, 0.05] }, { prior: [0.99, 0.01] }],
  signs: [{ leak: 0, links: [0.4, 0.8, 0.9].map((q, variable) => ({ variable, state: 1, q })) }],
};
const withLeak = (leak: number): Network => ({
  ...fever,
  signs: fever.signs.map((sign) => ({ ...sign, leak })),
});

/** P(fever | cold, flu, malaria) as evidence ratio through the solver. */
function feverGiven(states: readonly boolean[]): number {
  const virtual = states.map((on, variable) => (on ? yes(variable) : no(variable)));
  const log = (present: number[]) => infer(fever, { present, absent: [], virtual }).logEvidence;
  return Math.exp(log([0]) - log([]));
}

describe("fever table (Russell & Norvig)", () => {
  it.each([
    [[false, false, false], 0],
    [[false, false, true], 0.9],
    [[false, true, false], 0.8],
    [[false, true, true], 0.98],
    [[true, false, false], 0.4],
    [[true, false, true], 0.94],
    [[true, true, false], 0.88],
    [[true, true, true], 0.988],
  ])("%j -> %d", (states, expected) => {
    expect(Math.abs(feverGiven(states) - expected)).toBeLessThan(1e-12);
  });

  it("leak 0.1, q 0.2 and 0.4 (parameters from a Bayes-net manual, values computed)", () => {
    const two: Network = {
      variables: [{ prior: [0.5, 0.5] }, { prior: [0.5, 0.5] }],
      signs: [{ leak: 0.1, links: [0.2, 0.4].map((q, variable) => ({ variable, state: 1, q })) }],
    };
    const given = (a: boolean, b: boolean) => {
      const virtual = [a ? yes(0) : no(0), b ? yes(1) : no(1)];
      return Math.exp(
        infer(two, { present: [0], absent: [], virtual }).logEvidence -
          infer(two, { present: [], absent: [], virtual }).logEvidence,
      );
    };
    expect(
      [given(false, false), given(true, false), given(false, true), given(true, true)].map(
        (p) => +p.toFixed(12),
      ),
    ).toEqual([0.1, 0.28, 0.46, 0.568]);
  });

  it("diagnoses with priors 0.1, 0.05, 0.01 (computed by two routes)", () => {
    const p = infer(fever, only([0]));
    expect(Math.exp(p.logEvidence)).toBeCloseTo(0.0866944, 9);
    [0.49505389, 0.46700133, 0.10471726].forEach((v, i) => expect(p.marginals[i]![1]!).toBeCloseTo(v, 8));
    const leaky = infer(withLeak(0.02), only([0]));
    expect(Math.exp(leaky.logEvidence)).toBeCloseTo(0.10496051, 8);
    [0.41977722, 0.38754262, 0.08666909].forEach((v, i) => expect(leaky.marginals[i]![1]!).toBeCloseTo(v, 8));
  });
});

/** Heckerman's Quickscore network in miniature: values computed by enumeration and by Quickscore, agreeing to 1e-12. */
const small: Network = {
  variables: [{ prior: [0.9, 0.1] }, { prior: [0.95, 0.05] }, { prior: [0.8, 0.2] }],
  signs: [
    { leak: 0.01, q: [0.8, 0.3, 0] },
    { leak: 0.02, q: [0, 0.6, 0.4] },
    { leak: 0.05, q: [0.5, 0, 0.7] },
  ].map(({ leak, q }) => ({ leak, links: q.map((value, variable) => ({ variable, state: 1, q: value })) })),
};

describe("small three-cause network", () => {
  it.each([
    { id: "Q1", evidence: only([0]), p: 0.102862, d: [0.78257277, 0.17617779, 0.2] },
    { id: "Q2", evidence: only([0, 1]), p: 0.0199248979, d: [0.51447288, 0.58150772, 0.48956422] },
    { id: "Q3", evidence: only([0, 1], [2]), p: 0.0098792641, d: [0.25939534, 0.81735328, 0.18134302] },
    { id: "Q6", evidence: only([], [0, 1, 2]), p: 0.6759422286, d: [0.01098901, 0.01452282, 0.0430622] },
  ])("$id", ({ evidence, p, d }) => {
    const posterior = infer(small, evidence);
    // Printed to ten and eight places: half a unit of the last place is all the comparison can ask of them.
    expect(Math.abs(Math.exp(posterior.logEvidence) - p)).toBeLessThan(5.1e-11);
    d.forEach((value, i) => expect(Math.abs(posterior.marginals[i]![1]! - value)).toBeLessThan(5.1e-9));
    const exact = enumeratePosterior(small, evidence);
    d.forEach((_, i) =>
      expect(Math.abs(posterior.marginals[i]![1]! - exact.marginals[i]![1]!)).toBeLessThan(1e-12),
    );
  });

  it("sum rule: Q3 and its complement make Q2", () => {
    const p = (evidence: Evidence) => Math.exp(infer(small, evidence).logEvidence);
    expect(Math.abs(p(only([0, 1], [2])) + p(only([0, 1, 2])) - p(only([0, 1])))).toBeLessThan(1e-15);
  });

  it("expected information of the next test, joint entropy in bits (computed)", () => {
    const entropy = (evidence: Evidence) => {
      const total = infer(small, evidence).logEvidence;
      return entropyBits(
        assignmentsOf(small).map((states) => Math.exp(logJoint(small, evidence, states) - total)),
      );
    };
    const before = entropy(only([0]));
    expect(before).toBeCloseTo(1.921659, 6);
    const gain = (test: number) => {
      const yesP = Math.exp(infer(small, only([0, test])).logEvidence - infer(small, only([0])).logEvidence);
      return before - yesP * entropy(only([0, test])) - (1 - yesP) * entropy(only([0], [test]));
    };
    expect(gain(1)).toBeCloseTo(0.290987, 6);
    expect(gain(2)).toBeCloseTo(0.195281, 6);
  });
});

describe("bestSet", () => {
  it("is the most probable assignment of the small network", () => {
    const evidence = only([0, 1], [2]);
    const best = assignmentsOf(small)
      .map((states) => ({ states, log: logJoint(small, evidence, states) }))
      .reduce((a, b) => (b.log > a.log ? b : a));
    const found = bestSet(small, evidence, 3);
    expect(found.logJoint).toBeCloseTo(best.log, 12);
    expect(found.out).toEqual(
      best.states.flatMap((state, variable) => (state > 0 ? [{ variable, state }] : [])),
    );
  });
});
