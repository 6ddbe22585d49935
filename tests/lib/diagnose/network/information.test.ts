import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { entropyBits } from "@/lib/numeric";
import { solverFor } from "@/lib/diagnose/network/infer";
import { coefficients, information, powers } from "@/lib/diagnose/network/information";
import type { Evidence, Network } from "@/lib/diagnose/network/types";
import { anyCase } from "./arbitraries";
import { assignmentsOf, logJoint } from "./enumerate";
import { inDepth } from "../../../setup/in-depth";

/** What lib/diagnose/network/information.ts states as its largest error, bits. */
const SILENCE_ERROR_BITS = 3e-4;
const nearSilence = (x: number): number => powers.reduce((sum, k, i) => sum + coefficients[i]! * x ** k, 0);

/** Expected drop of the joint entropy, over all assignments, straight from the definition. */
function byEnumeration(network: Network, evidence: Evidence, sign: number): number {
  const all = assignmentsOf(network);
  const weights = (e: Evidence) => all.map((states) => Math.exp(logJoint(network, e, states)));
  const entropy = (list: readonly number[]) => {
    const total = list.reduce((a, b) => a + b, 0);
    return { total, bits: total > 0 ? entropyBits(list.map((p) => p / total)) : 0 };
  };
  const before = entropy(weights(evidence));
  const yes = entropy(weights({ ...evidence, present: [...evidence.present, sign] }));
  const no = entropy(weights({ ...evidence, absent: [...evidence.absent, sign] }));
  return before.bits - (yes.total * yes.bits + no.total * no.bits) / before.total;
}

function ours(network: Network, evidence: Evidence, sign: number): number {
  const solver = solverFor(network, evidence.present);
  return information(network, evidence, solver, solver.solve(evidence), sign).bits;
}

describe("information", () => {
  it("the sum of powers stays within the stated error of (1 - x)·ln(1 - x) up to 0.98", () => {
    for (let x = 0; x <= 0.98; x += 1e-4) {
      const exact = (1 - x) * Math.log1p(-x);
      expect(Math.abs(nearSilence(x) - exact) / Math.LN2).toBeLessThan(SILENCE_ERROR_BITS);
    }
    for (let x = 0.98; x < 1; x += 1e-4) {
      expect(Math.abs(nearSilence(x) - (1 - x) * Math.log1p(-x)) / Math.LN2).toBeLessThan(0.03);
    }
  });

  it("agrees with enumeration on random networks whose signs leak at least 0.02", () => {
    fc.assert(
      fc.property(anyCase, ({ network, evidence }) => {
        const leaky = {
          ...network,
          signs: network.signs.map((s) => ({ ...s, leak: Math.max(0.02, s.leak) })),
        };
        for (const sign of leaky.signs.keys()) {
          if (evidence.present.includes(sign) || evidence.absent.includes(sign)) continue;
          const gap = Math.abs(ours(leaky, evidence, sign) - byEnumeration(leaky, evidence, sign));
          expect(gap).toBeLessThan(SILENCE_ERROR_BITS);
        }
      }),
      { numRuns: inDepth(120, 1200), seed: 3 },
    );
  });

  it("three causes, first finding present: 0.290987 and 0.195281 bit (computed by two routes)", () => {
    const network: Network = {
      variables: [{ prior: [0.9, 0.1] }, { prior: [0.95, 0.05] }, { prior: [0.8, 0.2] }],
      signs: [
        { leak: 0.01, q: [0.8, 0.3, 0] },
        { leak: 0.02, q: [0, 0.6, 0.4] },
        { leak: 0.05, q: [0.5, 0, 0.7] },
      ].map(({ leak, q }) => ({ leak, links: q.map((p, variable) => ({ variable, state: 1, q: p })) })),
    };
    const evidence = { present: [0], absent: [], virtual: [] };
    expect(Math.abs(ours(network, evidence, 1) - 0.290987)).toBeLessThan(SILENCE_ERROR_BITS);
    expect(Math.abs(ours(network, evidence, 2) - 0.195281)).toBeLessThan(SILENCE_ERROR_BITS);
  });
});
