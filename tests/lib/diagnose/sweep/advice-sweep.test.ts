import { afterEach, describe, expect, it, vi } from "vitest";
import { DiagnoseInputSchema } from "@/lib/diagnose";
import { sweep } from "./broken-advice";
import { grid, type ask } from "./grid";
import { inDepth } from "../../../setup/in-depth";

/** Laws of our own; no published source. The deep run walks every fourth, too. */
const quick = Boolean(process.env["TOELINE_QUICK"]);
const EVERY = quick ? 600 : inDepth(960, 60);

it(`holds the laws of the one change on every ${EVERY}th set-up of the grid`, () => {
  const { beads, proposals, broken, worstStep, worstJump } = sweep(EVERY, 11);
  console.log(
    `${grid().length} set-ups in the grid, ${beads} beads, ${proposals} changes; worst step ${worstStep.toFixed(3)}, worst jump ${worstJump.toFixed(3)} of the reading`,
  );
  expect(broken.slice(0, 5)).toEqual([]);
  expect(worstStep).toBeLessThanOrEqual(0.2 + 1e-6);
  // A reading that moves by a hundredth moves its target by no more than five.
  expect(worstJump).toBeLessThanOrEqual(0.05);
  // The laws say nothing where nothing is ever proposed.
  expect(proposals).toBeGreaterThan(beads);
});

/** Each fault is put in on purpose; the laws must see it within some hundred beads. */
describe.skipIf(quick)("the laws catch", () => {
  afterEach(() => {
    for (const file of ["steps/target", "tables/knobs", "advice/grounds", "readings/facts", "evidence"])
      vi.doUnmock(`@/lib/diagnose/${file}`);
  });

  /** Sweeps a diagnosis in which one file is other than it should be, until each of these laws is seen broken. */
  async function expectCaught(
    file: string,
    change: (real: Record<string, unknown>) => object,
    laws: readonly string[],
  ): Promise<void> {
    vi.resetModules();
    vi.doMock(`@/lib/diagnose/${file}`, async (original) => {
      const real = await original<Record<string, unknown>>();
      return { ...real, ...change(real) };
    });
    const faulty = await import("@/lib/diagnose");
    const answer: typeof ask = (input) => {
      const result = faulty.diagnose(DiagnoseInputSchema.parse(input));
      if (!result.ok) throw new Error("not diagnosed");
      return result.value;
    };
    const seen = (broken: readonly string[]) =>
      laws.filter((law) => broken.some((one) => one.startsWith(law)));
    // Jumps are measured, not found broken: no second answers are asked for.
    const { broken } = sweep(250, 3, answer, Infinity, (found) => seen(found).length === laws.length);
    expect(seen(broken)).toEqual(laws);
  }

  it("a dial that is turned as far as the aim lies", () =>
    expectCaught(
      "steps/target",
      (real) => ({
        targetFor: (from: number, aim: number) => ({
          to: aim + 0 * from,
          partly: false,
          backIn: false,
          real: !real,
        }),
      }),
      ["more than a fifth at once", "out of the wire's rows"],
    ));

  it("two changes that undo each other", () =>
    expectCaught("tables/knobs", () => ({ pullApart: () => false }), ["two changes undo each other"]));

  it("answers that are not listened to", () =>
    expectCaught(
      "advice/grounds",
      () => ({ groundsOf: () => ({ recorded: new Set(), answered: new Set(), cleared: new Set() }) }),
      ["answered as right, proposed all the same"],
    ));

  it("more current on a plate that has too much", () =>
    expectCaught("readings/facts", () => ({ forbiddenIn: () => [] }), [
      "more, where the plate has too much",
    ]));

  it("heat where the bead melted through", () =>
    expectCaught("evidence", () => ({ contrariesIn: () => [] }), ["hotter, where it melted through"]));
});
