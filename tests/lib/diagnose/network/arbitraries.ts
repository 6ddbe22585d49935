import fc from "fast-check";
import type { Evidence, Network } from "@/lib/diagnose/network/types";

/** Seeded generator (mulberry32), so that a counter-example can be replayed from its seed alone. */
export function randomFrom(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export interface Case {
  readonly network: Network;
  readonly evidence: Evidence;
}

/** Up to 8 variables of 2 to 4 states (at most 2 000 assignments), up to 9 signs, evidence of all four kinds. */
export function randomCase(seed: number): Case {
  const random = randomFrom(seed);
  const below = (n: number) => Math.floor(random() * n);
  const variables = Array.from({ length: 1 + below(6) }, () => {
    const raw = Array.from({ length: 2 + below(3) }, () => 0.02 + random());
    const sum = raw.reduce((a, b) => a + b, 0);
    return { prior: raw.map((p) => p / sum) };
  });
  const signs = Array.from({ length: 1 + below(9) }, () => ({
    leak: 0.001 + 0.2 * random(),
    links: variables.flatMap(({ prior }, variable) =>
      prior.flatMap((_, state) =>
        state > 0 && random() < 0.6 ? [{ variable, state, q: random() < 0.05 ? 1 : random() }] : [],
      ),
    ),
  }));
  const present: number[] = [];
  const absent: number[] = [];
  signs.forEach((_, sign) => {
    const r = random();
    if (r < 0.5) present.push(sign);
    else if (r < 0.75) absent.push(sign);
  });
  const virtual = variables.flatMap(({ prior }, variable) =>
    random() < 0.4 ? [{ variable, likelihood: prior.map(() => 0.01 + random()) }] : [],
  );
  return { network: { variables, signs }, evidence: { present, absent, virtual } };
}

export const anyCase = fc.integer({ min: 0, max: 2 ** 31 - 1 }).map(randomCase);
