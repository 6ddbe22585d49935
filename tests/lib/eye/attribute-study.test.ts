import { describe, expect, it } from "vitest";
import { attributeStudy } from "@/lib/eye";

/**
 * AIAG, Measurement Systems Analysis, the attribute example: cross tables of three appraisers (three looks at each of fifty
 * parts) with the reference, and what it prints of each: kappa, miss rate, false alarm rate. From memory; the figures are
 * recomputed. Looks are given here one a bead, because the cross table does not say which look was at which part.
 */
const appraisers = [
  {
    name: "A",
    failsRight: 45,
    failsWrong: 5,
    passesWrong: 3,
    passesRight: 97,
    kappa: 0.88,
    miss: 6.3,
    alarm: 4.9,
  },
  {
    name: "B",
    failsRight: 45,
    failsWrong: 2,
    passesWrong: 3,
    passesRight: 100,
    kappa: 0.92,
    miss: 6.3,
    alarm: 2,
  },
  {
    name: "C",
    failsRight: 42,
    failsWrong: 9,
    passesWrong: 6,
    passesRight: 93,
    kappa: 0.77,
    miss: 12.5,
    alarm: 8.8,
  },
];
const times = <T>(count: number, value: T): T[] => Array.from({ length: count }, () => value);

describe("a study of attributes", () => {
  it.each(appraisers)("prints what the handbook prints of appraiser $name", (one) => {
    const truth = [
      ...times(one.failsRight + one.passesWrong, true),
      ...times(one.failsWrong + one.passesRight, false),
    ];
    const said = [
      ...times(one.failsRight, true),
      ...times(one.passesWrong, false),
      ...times(one.failsWrong, true),
      ...times(one.passesRight, false),
    ].map((fails) => [fails]);
    const [study] = attributeStudy({ truth, people: [{ name: one.name, said }] }).people;
    expect(study?.withTruth.value).toBeCloseTo(one.kappa, 2);
    expect((100 * (study?.misses.value ?? 0)).toFixed(1)).toBe(one.miss.toFixed(1));
    expect((100 * (study?.falseAlarms.value ?? 0)).toFixed(1)).toBe(one.alarm.toFixed(1));
  });

  /** The same example: effectiveness 42, 45 and 40 of 50 with intervals 71 to 93, 78 to 97 and 66 to 90 %. From memory. */
  it.each([
    [42, 71, 93],
    [45, 78, 97],
    [40, 66, 90],
  ])("%i of 50 right are %i to %i in a hundred", (right, low, high) => {
    const truth = times(50, true);
    const said = truth.map((_, i) => [i < right]);
    const [study] = attributeStudy({ truth, people: [{ name: "A", said }] }).people;
    expect(study?.right).toMatchObject({ count: right, of: 50 });
    expect(Math.round(100 * (study?.right.low ?? 0))).toBe(low);
    expect(Math.round(100 * (study?.right.high ?? 0))).toBe(high);
  });

  it("a person who wavers is neither right nor steady on that bead, and pairs and all are compared", () => {
    const study = attributeStudy({
      truth: [true, false, true],
      people: [
        {
          name: "A",
          said: [
            [true, true],
            [false, false],
            [true, false],
          ],
        },
        {
          name: "B",
          said: [
            [true, true],
            [true, true],
            [true, true],
          ],
        },
      ],
    });
    expect(study.people[0]).toMatchObject({ right: { count: 2, of: 3 }, steady: { count: 2, of: 3 } });
    expect(study.people[1]).toMatchObject({
      right: { count: 2 },
      steady: { count: 3 },
      falseAlarms: { count: 2, of: 2 },
    });
    expect(study.pairs.map(({ one, other }) => [one, other])).toEqual([["A", "B"]]);
    expect(study.together?.observed).toBeCloseTo(2 / 3, 10);
    expect(attributeStudy({ truth: [], people: [] })).toEqual({ people: [], pairs: [], together: null });
  });
});
