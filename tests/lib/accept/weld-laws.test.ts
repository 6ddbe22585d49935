import { afterEach, describe, expect, it, vi } from "vitest";
import type { Verdict, VerdictRow } from "@/lib/accept";
import type { decide } from "@/lib/accept/decide";
import { judgeParsed } from "@/lib/accept/judge";
import { brokenLaws, type Judge } from "./broken-laws";
import { inDepth } from "../../setup/in-depth";

/** Laws of our own; no published source. */
const quick = Boolean(process.env["TOELINE_QUICK"]);
const WELDS = quick ? 500 : inDepth(350, 20_000);

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

/** What the laws say of a judge with a fault, until it is what they are to say. */
const foundIn = (faulty: Judge, welds: number, sign: RegExp): string =>
  brokenLaws(faulty, welds, 1, (broken) => sign.test(broken.at(-1) ?? "")).broken.join("\n");

/** Each fault is put in on purpose; the laws must see it within so many welds. */
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
    const sign = /to accept without/;
    expect(foundIn((input) => opened(faulty.judgeParsed(input)), 2000, sign)).toMatch(sign);
  });

  it("a reading that is ignored", () => {
    const faulty: Judge = (input) =>
      judge({ ...input, beadReadings: { ...input.beadReadings, throat: null } });
    const sign = /throat silent/;
    expect(foundIn(faulty, 300, sign)).toMatch(sign);
  });

  it("a row that is dropped", () => {
    const faulty: Judge = (input) => {
      const verdict = judge(input);
      const rows = verdict.rows.filter(({ imperfections }) => !imperfections.includes("undercut"));
      return { ...verdict, rows, verdict: word(rows) };
    };
    const sign = /\.depth silent/;
    expect(foundIn(faulty, 300, sign)).toMatch(sign);
  });

  it("a thickness that is made up where none was given", () => {
    const faulty: Judge = (input) =>
      judge({ ...input, weld: { ...input.weld, thicknessMm: input.weld.thicknessMm ?? 40 } });
    const sign = /to accept without.*thicknessMm/;
    expect(foundIn(faulty, 3000, sign)).toMatch(sign);
  });

  it("a judge that reads the first mark only", () => {
    const faulty: Judge = (input) => judge({ ...input, observations: input.observations.slice(0, 1) });
    const sign = /in another order/;
    expect(foundIn(faulty, 500, sign)).toMatch(sign);
  });

  it("contradictions that are not looked at", () => {
    const faulty: Judge = (input) => {
      const verdict = judge(input);
      const rows = verdict.rows.filter(({ ruleId }) => !ruleId.endsWith("-readings"));
      return { ...verdict, rows, verdict: word(rows) };
    };
    const sign = /although contradictory/;
    expect(foundIn(faulty, 3000, sign)).toMatch(sign);
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
    const sign = /larger/;
    expect(foundIn(faulty, 3000, sign)).toMatch(sign);
  });
});
