import { describe, expect, it } from "vitest";
import { DiagnoseInputSchema, diagnose } from "@/lib/diagnose";
import type { Expectation, Scenario } from "./scenario";
import { scenarios } from "./scenarios";
import { groups, marksFor, missedIn, scoreScenario, totalsOf } from "./score-scenario";

const given = (id: string): Scenario["given"] => scenarios.find((one) => one.id === id)!.given;

function diagnosed(id: string) {
  const result = diagnose(DiagnoseInputSchema.parse(given(id)));
  if (!result.ok) throw new Error(id);
  return result.value;
}

/** Gasless wire on the wrong lug: a choice; a gun tipped over: a number; a crack: the inspector first. */
const wrongLug = diagnosed("F02");
const tippedGun = diagnosed("F03");
const stopping = diagnosed(scenarios.find(({ expect: { inspector } }) => inspector)!.id);

const missed = (expected: Expectation, diagnosis = tippedGun) =>
  missedIn({ id: "", marks: marksFor(expected, diagnosis), first: null, answer: "" });

describe("judging the advice", () => {
  const gun = tippedGun.firstChange!;
  const met: Expectation = {
    top: [tippedGun.causes[0]!.id],
    change: { causes: [gun.causeId], lo: gun.toSi!, hi: gun.toSi! },
    avoid: ["no-purge"],
    flags: tippedGun.contradictions.map(({ code }) => code),
    cautions: ["fume", "hot slag|nothing"],
  };

  it("finds nothing amiss where all is met", () => {
    expect(missed(met)).toEqual([]);
    expect(missed({ top: ["polarity"], change: { causes: ["polarity"], toText: "DCEN" } }, wrongLug)).toEqual(
      [],
    );
    expect(missed({ top: null, inspector: true }, stopping)).toEqual([]);
  });

  it.each<[string, Expectation, readonly string[]]>([
    ["another first cause", { ...met, top: ["gas-low"] }, ["first"]],
    [
      "another change, and then no number",
      { ...met, change: { causes: ["gas-low"], lo: 1, hi: 2 } },
      ["change"],
    ],
    ["a change where none is due", { ...met, change: null }, ["change"]],
    ["a change where all should be quiet", { top: null, quiet: true }, ["change"]],
    ["a number too low", { ...met, change: { causes: [gun.causeId], lo: 46, hi: 50 } }, ["number"]],
    ["a number too high", { ...met, change: { causes: [gun.causeId], lo: 1, hi: 44 } }, ["number"]],
    ["a dangerous first change", { ...met, avoid: [gun.causeId] }, ["danger"]],
    ["a flag that is not raised", { ...met, flags: ["no-such-flag"] }, ["flags"]],
    ["a caution that is not given", { ...met, cautions: ["fume", "no such caution"] }, ["cautions"]],
    ["no inspector", { ...met, inspector: true }, ["inspector"]],
  ])("notices %s", (_, expected, wanted) => expect(missed(expected)).toEqual(wanted));

  it("notices the wrong word", () => {
    const change = { causes: ["polarity"], toText: "DCEP" } as const;
    expect(missed({ top: null, change }, wrongLug)).toEqual(["number"]);
  });

  it("looks for danger up to the third change, not further", () => {
    const order = [gun, ...diagnosed("F19").nextChanges, gun, gun, gun].map((change, i) => ({
      ...change,
      causeId: (["volt-low", "volt-high", "wfs-low", "wfs-high"] as const)[i] ?? gun.causeId,
    }));
    const diagnosis = { ...tippedGun, firstChange: order[0]!, nextChanges: order.slice(1) };
    expect(missed({ top: null, avoid: ["wfs-low"] }, diagnosis)).toEqual(["danger"]);
    expect(missed({ top: null, avoid: ["wfs-high"] }, diagnosis)).toEqual([]);
  });

  it("takes the change that stands ready where an inspector comes first", () => {
    const diagnosis = { ...stopping, nextChanges: [gun] };
    expect(missed({ top: null, change: { causes: [gun.causeId] } }, diagnosis)).toEqual([]);
    expect(missed({ top: null, change: { causes: ["gas-low"] } }, diagnosis)).toEqual(["change"]);
  });

  it("judges nothing that is not asked for, and adds up", () => {
    const judged = scenarios.slice(0, 9).map((one) => scoreScenario(one));
    const totals = totalsOf(judged);
    for (const group of groups) {
      expect(totals[group].of).toBe(judged.reduce((sum, { marks }) => sum + marks[group].of, 0));
      expect(totals[group].count).toBeLessThanOrEqual(totals[group].of);
    }
    expect(Object.values(marksFor({ top: null }, tippedGun)).every(({ of }) => of === 0)).toBe(true);
  });
});
