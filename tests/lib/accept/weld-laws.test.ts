import { afterEach, describe, expect, it, vi } from "vitest";
import type { Verdict, VerdictRow } from "@/lib/accept";
import type { decide } from "@/lib/accept/decide";
import { judgeParsed } from "@/lib/accept/judge";
import { brokenLaws, type Judge } from "./broken-laws";
import { inDepth } from "../../setup/in-depth";

/** Laws of our own; no published source. */
const quick = Boolean(process.env["TOELINE_QUICK"]);
const WELDS = quick ? 1_000 : inDepth(5_000, 20_000);

interface Real {
  decide: typeof decide;
}

const opened = (result: ReturnType<typeof judgeParsed>): Verdict => {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
};
const judge: Judge = (input) => opened(judgeParsed(input));

it(`holds four laws on ${WELDS} welds`, () => {
  const { broken, counts } = brokenLaws(judge, WELDS);
  console.log(`${WELDS} welds: ${JSON.stringify(counts)}`);
  expect(broken.slice(0, 20)).toEqual([]);
  // The laws say nothing where nothing is ever accepted.
  expect(counts["accept"]).toBeGreaterThan(WELDS / 10);
  expect(counts["reject"]).toBeGreaterThan(WELDS / 10);
  expect(counts["cannot-say"]).toBeGreaterThan(WELDS / 10);
});

const word = (rows: readonly VerdictRow[]): Verdict["verdict"] =>
  rows.some(({ result }) => result === "fails")
    ? "reject"
    : rows.some(({ result }) => result === "open")
      ? "cannot-say"
      : "accept";

/** Each fault is put in on purpose; the laws must see it within a few hundred welds. */
describe.skipIf(quick)("the laws catch", () => {
  afterEach(() => vi.doUnmock("@/lib/accept/decide"));

  it("a slack without bound, by which an unread figure always meets", async () => {
    vi.resetModules();
    vi.doMock("@/lib/accept/decide", async (original) => {
      const real = await original<Real>();
      return {
        ...real,
        decide: (...[figure, comparison, limit]: Parameters<typeof real.decide>) =>
          figure.high === Infinity
            ? { result: "meets", straddles: false }
            : real.decide(figure, comparison, limit),
      };
    });
    const faulty = await import("@/lib/accept/judge");
    expect(brokenLaws((input) => opened(faulty.judgeParsed(input)), 2000).broken.join("\n")).toContain(
      "to accept without",
    );
  });

  it("a reading that is ignored", () => {
    const faulty: Judge = (input) =>
      judge({ ...input, beadReadings: { ...input.beadReadings, throat: null } });
    expect(brokenLaws(faulty, 300).broken.join("\n")).toContain("throat silent");
  });

  it("a row that is dropped", () => {
    const faulty: Judge = (input) => {
      const verdict = judge(input);
      const rows = verdict.rows.filter(({ imperfections }) => !imperfections.includes("undercut"));
      return { ...verdict, rows, verdict: word(rows) };
    };
    expect(brokenLaws(faulty, 300).broken.join("\n")).toContain(".depth silent");
  });

  it("a thickness that is made up where none was given", () => {
    const faulty: Judge = (input) =>
      judge({ ...input, weld: { ...input.weld, thicknessMm: input.weld.thicknessMm ?? 40 } });
    expect(brokenLaws(faulty, 3000).broken.join("\n")).toMatch(/to accept without.*thicknessMm/);
  });

  it("a judge that reads the first mark only", () => {
    const faulty: Judge = (input) => judge({ ...input, observations: input.observations.slice(0, 1) });
    const { broken } = brokenLaws(faulty, 500);
    expect(broken.join("\n")).toContain("in another order");
  });

  it("contradictions that are not looked at", () => {
    const faulty: Judge = (input) => {
      const verdict = judge(input);
      const rows = verdict.rows.filter(({ ruleId }) => !ruleId.endsWith("-readings"));
      return { ...verdict, rows, verdict: word(rows) };
    };
    expect(brokenLaws(faulty, 3000).broken.join("\n")).toContain("although contradictory");
  });

  it("a size that is larger and counts for less", () => {
    const faulty: Judge = (input) =>
      judge({
        ...input,
        observations: input.observations.map((one) => ({
          ...one,
          depthMm: one.depthMm && one.depthMm.value > 3 ? { ...one.depthMm, value: 0 } : one.depthMm,
        })),
      });
    expect(brokenLaws(faulty, 3000).broken.join("\n")).toContain("larger");
  });
});
