import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { solverFor } from "@/lib/diagnose/network/infer";
import { planFor } from "@/lib/diagnose/network/plan";
import { structureOf } from "@/lib/diagnose/network/problem";
import type { Network } from "@/lib/diagnose/network/types";
import { anyCase, randomFrom } from "./arbitraries";
import { enumeratePosterior } from "./enumerate";
import { infer } from "./infer";
import { inDepth } from "../../../setup/in-depth";

/** Largest difference of two posteriors, marginals absolute and log evidence absolute. */
function gap(a: ReturnType<typeof infer>, b: ReturnType<typeof infer>): number {
  const marginals = a.marginals.flatMap((row, v) => row.map((p, s) => Math.abs(p - b.marginals[v]![s]!)));
  return Math.max(Math.abs(a.logEvidence - b.logEvidence), ...marginals);
}

describe("infer against enumeration", () => {
  it("agrees on thousands of random networks", () => {
    fc.assert(
      fc.property(anyCase, ({ network, evidence }) => {
        expect(gap(infer(network, evidence), enumeratePosterior(network, evidence))).toBeLessThan(1e-10);
      }),
      { numRuns: inDepth(300, 4000) },
    );
  });
});

describe("solverFor against enumeration", () => {
  it("gives what the evidence is worth without each present sign, and with a variable held", () => {
    fc.assert(
      fc.property(anyCase, ({ network, evidence }) => {
        const { solve, logEvidence } = solverFor(network, evidence.present);
        const plain = solve(evidence);
        expect(logEvidence(evidence)).toBe(plain.logEvidence);
        [...new Set(evidence.present)].forEach((sign, i) => {
          const rest = { ...evidence, present: evidence.present.filter((other) => other !== sign) };
          const anew = enumeratePosterior(network, rest).logEvidence;
          expect(Math.abs(plain.logWithout[i]! - anew)).toBeLessThan(1e-10);
        });
        const held = { variable: network.variables.length - 1, state: 1 };
        const likelihood = network.variables[held.variable]!.prior.map((_, s) => (s === 1 ? 1 : 0));
        const given = {
          ...evidence,
          virtual: [...evidence.virtual, { variable: held.variable, likelihood }],
        };
        const exact = enumeratePosterior(network, given);
        if (exact.logEvidence === -Infinity) expect(solve(evidence, held).logEvidence).toBe(-Infinity);
        else expect(gap(solve(evidence, held), exact)).toBeLessThan(1e-10);
      }),
      { numRuns: 1000 },
    );
  });
});

describe("infer", () => {
  const network: Network = {
    variables: [{ prior: [0.9, 0.1] }, { prior: [0.95, 0.05] }, { prior: [0.8, 0.2] }],
    signs: [
      {
        leak: 0.01,
        links: [
          { variable: 0, state: 1, q: 0.8 },
          { variable: 1, state: 1, q: 0.3 },
        ],
      },
    ],
  };

  it("keeps priors when nothing is observed", () => {
    const { marginals, logEvidence } = infer(network, { present: [], absent: [], virtual: [] });
    expect(logEvidence).toBeCloseTo(0, 14);
    expect(marginals).toEqual(network.variables.map(({ prior }) => prior));
  });

  it("gives -Infinity and NaN for impossible evidence", () => {
    const virtual = [{ variable: 0, likelihood: [0, 0] }];
    expect(infer(network, { present: [], absent: [], virtual }).logEvidence).toBe(-Infinity);
  });

  it("uses hubs on wide networks and still agrees with enumeration", () => {
    const random = randomFrom(20261125);
    const variables = Array.from({ length: 12 }, () => ({ prior: [0.93, 0.07] }));
    // Three variables touch every sign, the other nine two neighbours each: summing the three outside pays.
    const signs = Array.from({ length: 18 }, (_, sign) => ({
      leak: 0.02,
      links: variables.flatMap((_, variable) =>
        variable < 3 || Math.floor(sign / 2) === variable - 3
          ? [{ variable, state: 1, q: 0.1 + 0.5 * random() }]
          : [],
      ),
    }));
    const wide = { variables, signs };
    const evidence = { present: signs.map((_, i) => i), absent: [], virtual: [] };
    expect(planFor(structureOf(wide, evidence.present)).hubs.length).toBeGreaterThan(0);
    expect(gap(infer(wide, evidence), enumeratePosterior(wide, evidence))).toBeLessThan(1e-10);
  });
});
