import { expect, it } from "vitest";
import { sweep } from "./broken-advice";
import { grid } from "./grid";

it("holds the laws of the one change on every fourth set-up of the grid", () => {
  const { beads, proposals, broken, worstStep, worstJump } = sweep(4, 2026, undefined, 8);
  console.log(
    `${grid().length} set-ups in the grid, ${beads} beads, ${proposals} changes; worst step ${worstStep.toFixed(3)}, worst jump ${worstJump.toFixed(3)} of the reading`,
  );
  expect(broken.slice(0, 5)).toEqual([]);
  expect(worstStep).toBeLessThanOrEqual(0.2 + 1e-6);
  expect(worstJump).toBeLessThanOrEqual(0.05);
  expect(proposals).toBeGreaterThan(beads);
});
