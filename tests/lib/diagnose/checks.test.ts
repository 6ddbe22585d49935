import { describe, expect, it } from "vitest";
import { DiagnoseInputSchema } from "@/lib/diagnose";
import { nextChecks } from "@/lib/diagnose/checks";
import { contextOf } from "@/lib/diagnose/diagnose";
import { evidenceItems } from "@/lib/diagnose/evidence";
import { causeModel } from "@/lib/diagnose/model";
import { solverFor } from "@/lib/diagnose/network/infer";
import { readingsOf } from "@/lib/diagnose/readings/all";
import { symptoms } from "@/lib/diagnose/tables/symptoms";
import { weigh } from "@/lib/diagnose/weigh";
import { imperfections, processes } from "@/lib/trade";
import cases from "@/tests/cases/diagnose/published.json";

function checksOf(given: unknown, exact: boolean) {
  const input = DiagnoseInputSchema.parse(given);
  const model = causeModel(input.setup.process, {});
  const weighed = weigh(
    model,
    evidenceItems(input, contextOf(input).electrode, readingsOf(contextOf(input))),
  );
  const solver = solverFor(weighed.network, weighed.evidence.present);
  return nextChecks(model, weighed, solver, solver.solve(weighed.evidence), input, exact);
}

/** The rough ranking stands in when very much is marked; here both on the published cases, where both are cheap. */
describe("rough and exact information on the fifty published cases", () => {
  const pairs = cases.map(({ given }) => ({ rough: checksOf(given, false), exact: checksOf(given, true) }));

  it("rank nearly alike: in nine cases of ten the rough ranking's first check is among the exact first three", () => {
    const places = pairs.map(({ rough, exact }) => exact.findIndex(({ id }) => id === rough[0]?.id));
    console.table({
      "same first check": places.filter((p) => p === 0).length,
      "among the first three": places.filter((p) => p >= 0 && p < 3).length,
      of: pairs.length,
    });
    expect(places.filter((p) => p >= 0 && p < 3).length).toBeGreaterThanOrEqual(0.9 * pairs.length);
  });

  it("questions about one thing are the same in both, to the last digit", () => {
    for (const { rough, exact } of pairs) {
      const bits = new Map(exact.map((check) => [check.id, check.informationBits]));
      for (const check of rough) {
        if (check.kind === "look" || check.source.confidence === "derived") continue;
        if (!check.answers.some(({ id }) => id === "yes"))
          expect(bits.get(check.id)).toBe(check.informationBits);
      }
    }
  });
});

describe("questions", () => {
  const anyProcess = checksOf({ findings: [], setup: {} }, false);

  it("about a process that nobody has named leave out what only one of them can show", () => {
    const narrow = symptoms.filter(({ processes: in_ }) => in_.length < processes.length).map(({ id }) => id);
    expect(narrow).toContain("rod-sticks");
    expect(anyProcess.map(({ id }) => id).filter((id) => narrow.some((one) => one === id))).toEqual([]);
    const stick = checksOf({ findings: [], setup: { process: "SMAW" } }, false);
    expect(stick.map(({ id }) => id)).toContain("rod-sticks");
  });

  it("name what they ask for as it is named everywhere, and put no article before a list of names", () => {
    const looks = anyProcess.filter(({ kind }) => kind === "look");
    expect(looks.length).toBeGreaterThan(10);
    for (const { imperfection, question } of looks)
      expect(question).toBe(`${imperfections[imperfection!].name}: is it there?`);
  });
});
