import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { covariance, fittedProcess, gaussianProcess } from "@/lib/trials/gaussian-process";

const kernel = { height: 1.3, reach: [0.9] };

describe("a Gaussian process through noise", () => {
  it("falls off as Matérn 5/2 does (Rasmussen and Williams 2006, eq. 4.17)", () => {
    // At r = reach: (1 + √5 + 5/3) e^-√5.
    expect(covariance({ height: 1, reach: [0.5] }, [0], [0.5])).toBeCloseTo(
      (1 + Math.sqrt(5) + 5 / 3) * Math.exp(-Math.sqrt(5)),
      12,
    );
    expect(covariance(kernel, [0.4], [0.4])).toBeCloseTo(1.69, 12);
  });

  it("believes one bead as far as it reaches (closed form for one run)", () => {
    const noise = 0.4;
    const { at } = gaussianProcess([[0]], [5], kernel, noise);
    for (const x of [0, 0.3, 2]) {
      const k = covariance(kernel, [0], [x]);
      const [h2, s2] = [1.69, noise ** 2];
      const all = h2 + s2;
      // Level known by the one run: its own variance, what the run tells, and the unknown level.
      const variance = h2 - (k * k) / all + (1 - k / all) ** 2 * all;
      expect(at([x]).mean).toBeCloseTo(5, 12);
      expect(at([x]).sd).toBeCloseTo(Math.sqrt(variance), 12);
    }
  });

  it("is the closed form of two runs", () => {
    const [y0, y1, noise] = [2, 3.4, 0.3];
    const made = gaussianProcess([[-0.5], [0.5]], [y0, y1], kernel, noise);
    const d = 1.69 + noise ** 2;
    const c = covariance(kernel, [-0.5], [0.5]);
    // By symmetry the level is the mean, and the difference shrinks by (k0 - k1) / (d - c).
    const x = 0.35;
    const [k0, k1] = [covariance(kernel, [-0.5], [x]), covariance(kernel, [0.5], [x])];
    expect(made.at([x]).mean).toBeCloseTo(2.7 + ((k1 - k0) * 0.7) / (d - c), 12);
    const half = (y1 - y0) / 2;
    const quadratic = (2 * half ** 2) / (d - c);
    expect(made.logLikelihood).toBeCloseTo(
      -0.5 * (quadratic + Math.log(d * d - c * c) + 2 * Math.log(2 * Math.PI)),
      12,
    );
  });

  it("goes through its runs where there is no noise to speak of, and is surer with every run", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: -10, max: 10 }), { minLength: 2, maxLength: 7 }),
        fc.integer({ min: -10, max: 10 }),
        (places, more) => {
          const xs = places.map((p) => [p / 10]);
          const ys = xs.map(([x]) => Math.sin(3 * x!));
          const tight = gaussianProcess(xs, ys, kernel, 1e-4);
          xs.forEach((x, i) => expect(tight.at(x).mean).toBeCloseTo(ys[i]!, 4));
          const noisy = gaussianProcess(xs, ys, kernel, 0.3);
          const further = gaussianProcess([...xs, [more / 10]], [...ys, 0.1], kernel, 0.3);
          for (const x of [-1, -0.2, 0.6])
            expect(further.at([x]).sd).toBeLessThanOrEqual(noisy.at([x]).sd + 1e-9);
        },
      ),
      { seed: 2, numRuns: 40 },
    );
  });

  it("does not depend on the order of the runs, and moves with their level and unit", () => {
    const xs = [[-1], [-0.2], [0.4], [0.9]];
    const ys = [3, 1.2, 1.5, 2.8];
    const one = fittedProcess(xs, ys, 0.2);
    const turned = fittedProcess(xs.toReversed(), ys.toReversed(), 0.2);
    const moved = fittedProcess(
      xs,
      ys.map((y) => 10 + 4 * y),
      0.8,
    );
    for (const x of [-0.7, 0.1, 0.8]) {
      expect(turned.at([x]).mean).toBeCloseTo(one.at([x]).mean, 9);
      expect(moved.at([x]).mean).toBeCloseTo(10 + 4 * one.at([x]).mean, 9);
      expect(moved.at([x]).sd).toBeCloseTo(4 * one.at([x]).sd, 9);
    }
  });
});
