import { describe, expect, it } from "vitest";
import { judge, judgeInputJsonSchema, JudgeInputSchema, listCriteria, type Verdict } from "@/lib/accept";
import { acceptSentences } from "@/lib/accept/sentences";
import { quantity } from "./arbitraries";

const all = (id: string) => listCriteria().find((set) => set.id === id)!.imperfections;
const sound = {
  criteriaId: "iso-5817-c",
  weld: { kind: "fillet", thicknessMm: 8, throatMm: 5, lengthMm: 200 },
  beadReadings: {
    leg1: quantity(7.3),
    leg2: quantity(7.4),
    throat: quantity(5.2),
    convexity: quantity(0.6),
    width: quantity(10.4),
  },
  lookedFor: all("iso-5817-c"),
};
function verdictOf(input: object): Verdict {
  const result = judge(JudgeInputSchema.parse(input));
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const undercut = (more: object) => ({ id: "u", imperfection: "undercut", place: "upper-toe", ...more });

/** Cases invented by us; the limits they meet are checked in cases.test.ts. */
describe("judge", () => {
  it("accepts a sound weld that was looked at and gauged", () => {
    expect(verdictOf(sound).verdict).toBe("accept");
  });

  it("accepts nothing because nobody looked", () => {
    const verdict = verdictOf({ ...sound, lookedFor: [] });
    expect(verdict.verdict).toBe("cannot-say");
    expect(verdict.notLookedFor).toContain("undercut");
    for (const id of all("iso-5817-c"))
      expect(verdictOf({ ...sound, lookedFor: sound.lookedFor.filter((one) => one !== id) }).verdict).toBe(
        ["undersized", "oversized", "convex-bead", "uneven-legs"].includes(id) ||
          [
            "underfill",
            "sagging",
            "root-concavity",
            "excess-penetration",
            "incomplete-penetration",
            "misalignment",
          ].includes(id)
          ? // Settled by the readings, or without a rule for a fillet.
            id === "convex-bead"
            ? "cannot-say"
            : "accept"
          : "cannot-say",
      );
  });

  it("names the gauge that would settle an undercut nobody gauged", () => {
    const verdict = verdictOf({
      ...sound,
      observations: [undercut({ lengthMm: quantity(12, 0.6, "photo") })],
    });
    expect(verdict.verdict).toBe("cannot-say");
    expect(verdict.missing).toEqual([{ quantity: "depth", gauge: "undercut-gauge", observationId: "u" }]);
  });

  it("is open where a photo's uncertainty reaches across the limit, decided where a gauge reads the same", () => {
    const pore = (source: "photo" | "gauge") => ({
      id: "p",
      imperfection: "surface-porosity",
      diameterMm: quantity(0.95, 0.2, source),
    });
    const open = verdictOf({ ...sound, observations: [pore("photo")] });
    expect(open.rows[0]).toMatchObject({
      ruleId: "iso-c-1.3-surface-pore",
      result: "open",
      reason: "straddles-limit",
      missing: [{ quantity: "diameter", gauge: "calliper", observationId: "p" }],
    });
    expect(verdictOf({ ...sound, observations: [pore("gauge")] }).verdict).toBe("accept");
    const guarded = { ...sound, settings: { gauges: "guarded" }, observations: [pore("gauge")] };
    expect(verdictOf(guarded).verdict).toBe("cannot-say");
  });

  it("stands the worst clause on top: fails before open before meets, then by margin", () => {
    const verdict = verdictOf({
      ...sound,
      observations: [
        undercut({ depthMm: quantity(0.9), lengthMm: quantity(9) }),
        { id: "p", imperfection: "surface-porosity" },
      ],
    });
    expect(verdict.verdict).toBe("reject");
    expect(verdict.rows.map((row) => row.result).slice(0, 3)).toEqual(["fails", "open", "meets"]);
    expect(verdict.rows[0]).toMatchObject({ ruleId: "iso-c-1.7-undercut", value: 0.9 });
    expect(verdict.rows[0]!.margin).toBeCloseTo(-0.4, 12);
  });

  it("does not decide by a thickness it does not know, unless every band says the same", () => {
    const unknown = { ...sound, weld: { ...sound.weld, thicknessMm: null } };
    const some = verdictOf({
      ...unknown,
      observations: [undercut({ depthMm: quantity(0.3), lengthMm: quantity(9) })],
    });
    const row = some.rows.find((one) => one.ruleId === "iso-c-1.7-undercut")!;
    expect(row).toMatchObject({ result: "open", reason: "weld-fact-missing" });
    expect(row.missing).toEqual([{ quantity: "thickness", gauge: "calliper", observationId: null }]);
    const deep = verdictOf({
      ...unknown,
      observations: [undercut({ depthMm: quantity(3), lengthMm: quantity(9) })],
    });
    expect(deep.rows.some((one) => one.ruleId === "iso-c-1.7-undercut" && one.result === "meets")).toBe(
      false,
    );
  });

  it("leaves what no clause limits to a qualified person, until a setting says so", () => {
    const slag = { ...sound, observations: [{ id: "s", imperfection: "trapped-slag" }] };
    expect(verdictOf(slag).rows[0]).toMatchObject({ ruleId: "no-rule", reason: "qualified-person-decides" });
    expect(verdictOf({ ...slag, settings: { unlisted: "accepted" } }).verdict).toBe("accept");
    expect(verdictOf({ ...slag, settings: { unlisted: "refused" } }).verdict).toBe("reject");
  });

  it("decides nothing outside the scope of the set", () => {
    const thick = verdictOf({
      criteriaId: "aws-d1-3",
      weld: { kind: "fillet", thicknessMm: 10, legMm: 5, lengthMm: 100 },
      beadReadings: { leg1: quantity(6), leg2: quantity(6) },
      lookedFor: all("aws-d1-3"),
    });
    expect(thick.verdict).toBe("cannot-say");
    expect(thick.rows[0]).toMatchObject({ ruleId: "aws-d1-3-scope", result: "open" });
  });

  it("keeps the settings it applied, defaults included, and ignores keys it does not know", () => {
    const { settings } = verdictOf({ ...sound, settings: { nothing: true } });
    expect(settings).toEqual({
      gauges: "as-read",
      spatter: "undecided",
      temperColour: "undecided",
      unequalLegsAskedFor: false,
      unlisted: "undecided",
    });
  });

  it("sums heights where two imperfections lie in one cross section", () => {
    const two = (from: number) => ({
      ...sound,
      observations: [
        undercut({ alongMm: [10, 30], lengthMm: quantity(20), depthMm: quantity(0.45) }),
        { id: "c", imperfection: "crater-pipe", alongMm: [from, from + 4], depthMm: quantity(0.7) },
      ],
    });
    const row = (from: number) =>
      verdictOf(two(from)).rows.find(({ ruleId }) => ruleId === "iso-c-4.1-several-in-one-section")!;
    expect(row(28)).toMatchObject({ result: "fails" });
    expect(row(28).value).toBeCloseTo(1.15, 12);
    expect(row(31).result).toBe("meets");
  });

  it("takes a bare number as a size as it stands, and judges only what is asked for", () => {
    const plain = {
      criteriaId: "iso-5817-c",
      weld: { kind: "butt", thicknessMm: 10, lengthMm: 300 },
      lookedFor: "all",
      observations: [undercut({ depthMm: 0.4 }), { id: "c", imperfection: "longitudinal-crack" }],
    };
    expect(verdictOf(plain).verdict).toBe("reject");
    const alone = verdictOf({ ...plain, only: ["undercut"] });
    expect(alone).toMatchObject({ verdict: "accept", only: ["undercut"] });
    expect(alone.rows.every(({ imperfections }) => imperfections.includes("undercut"))).toBe(true);
    expect(verdictOf({ ...plain, only: ["wandering"] }).verdict).toBe("cannot-say");
  });

  it("names path and reason for a case it does not understand", () => {
    const bad = { ...sound, weld: { kind: "fillet", thicknessMm: -1 } };
    expect(judge(bad as never)).toMatchObject({
      ok: false,
      issues: [{ code: "bad-input", path: ["weld", "thicknessMm"] }],
    });
    const parsed = JudgeInputSchema.parse(sound);
    expect(judge({ ...parsed, criteriaId: "none" })).toMatchObject({
      issues: [{ code: "unknown-criteria" }],
    });
    expect(judge({ ...parsed, settings: { spatter: "maybe" } })).toMatchObject({
      issues: [{ code: "bad-setting", path: ["settings", "spatter"] }],
    });
  });

  it("publishes its input as JSON Schema, and has a sentence for every failure", () => {
    expect(judgeInputJsonSchema()).toMatchObject({ type: "object", required: ["criteriaId", "weld"] });
    for (const [code, sentence] of Object.entries(acceptSentences))
      expect(sentence({ code: code as never, path: ["a"], data: {} })).toMatch(/^[A-Z].*\.$/);
  });
});
