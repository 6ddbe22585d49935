import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { diagnose, DiagnoseInputSchema, type Diagnosis } from "@/lib/diagnose";
import { withoutCause } from "@/lib/diagnose/tables/without-cause";
import { imperfectionIds, imperfections, processes, type ImperfectionId } from "@/lib/trade";

function diagnosed(input: object): Diagnosis {
  const result = diagnose(DiagnoseInputSchema.parse(input));
  if (!result.ok) throw new Error("no diagnosis");
  return result.value;
}
const marks = (ids: readonly string[]) => ids.map((imperfection) => ({ imperfection }));
/** By name, because causes that are equally likely may change places. */
const ranking = ({ causes }: Diagnosis) =>
  causes.map(({ id, probability }) => [id, Number(probability.toFixed(9))] as const).toSorted();

describe("what has no cause in how the bead was run", () => {
  // Common practice, no source: these come from tools, handling and measuring.
  const handled = Object.keys(withoutCause) as ImperfectionId[];

  it.each(handled)("%s gets a sentence, no cause and no joint explanation", (id) => {
    const { causeless, explainable, joint, explanation } = diagnosed({ findings: marks([id, id]) });
    expect(causeless.map(({ imperfection }) => imperfection)).toEqual([id]);
    expect(causeless[0]?.sentence).toContain(imperfections[id].name);
    expect([explainable, joint]).toEqual([[], null]);
    expect(explanation.map(({ sentence }) => sentence)).toContain(causeless[0]?.sentence);
  });

  it("moves no cause, whatever else is marked", () => {
    fc.assert(
      fc.property(
        fc.subarray([...imperfectionIds], { maxLength: 3 }),
        fc.subarray(handled, { minLength: 1 }),
        fc.option(fc.constantFrom(...processes), { nil: null }),
        (others, tools, process) => {
          const rest = others.filter((id) => !handled.includes(id));
          const setup = { process };
          expect(ranking(diagnosed({ setup, findings: marks([...rest, ...tools]) }))).toEqual(
            ranking(diagnosed({ setup, findings: marks(rest) })),
          );
        },
      ),
      { numRuns: 60, seed: 20261126 },
    );
  });

  it("every mark is either explainable or said to be causeless, in every process", () => {
    for (const process of [null, ...processes])
      for (const id of imperfectionIds) {
        const { causeless, explainable } = diagnosed({ setup: { process }, findings: marks([id]) });
        expect([...causeless.map(({ imperfection }) => imperfection), ...explainable]).toEqual([id]);
      }
  });

  it("tells a mark the process cannot leave from one nothing leaves", () => {
    const [odd] = diagnosed({
      setup: { process: "FCAW-S" },
      findings: marks(["tungsten-inclusion"]),
    }).causeless;
    expect(odd?.sentence).toMatch(/FCAW-S/);
    expect(
      diagnosed({ setup: { process: "GTAW" }, findings: marks(["tungsten-inclusion"]) }).causeless,
    ).toEqual([]);
  });

  it("says that the ranking rests on the set-up alone only when it does", () => {
    const alone = (ids: readonly string[]) =>
      diagnosed({ findings: marks(ids) }).explanation.filter(({ sentence }) =>
        /nothing marked speaks/.test(sentence),
      );
    expect(alone(["grinding-mark"])).toHaveLength(1);
    expect(alone(["grinding-mark", "undercut"])).toEqual([]);
    expect(alone(["undercut"])).toEqual([]);
  });
});

describe("what the new marks point to", () => {
  // Common practice, no source, but for the sagging pass that is too big (WIS 5, section 3).
  it.each([
    ["burnback", "GMAW", ["tip-feed", "volt-high", "wfs-low", "ctwd-short"]],
    ["tungsten-inclusion", "GTAW", ["arc-short", "wfs-high", "polarity"]],
    ["angular-misalignment", "FCAW-G", ["misfit"]],
    ["sagging", "SMAW", ["travel-slow", "wfs-high", "pass-too-big", "work-angle"]],
    ["irregular-surface", "GTAW", ["travel-uneven"]],
  ] as const)("%s in %s", (id, process, expected) => {
    const { causes } = diagnosed({ setup: { process }, findings: marks([id]) });
    expect(expected as readonly string[]).toContain(causes[0]?.id);
    const before = new Map(ranking(diagnosed({ setup: { process } })));
    for (const cause of expected) {
      const now = causes.find((one) => one.id === cause)!;
      expect([cause, now.probability > before.get(cause)!]).toEqual([cause, true]);
      expect(now.why.some(({ key }) => key === `mark:${id}`)).toBe(true);
    }
  });
});
