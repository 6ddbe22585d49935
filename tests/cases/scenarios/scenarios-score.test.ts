import { describe, expect, it } from "vitest";
import { keptBack } from "./kept-back";
import type { Scenario } from "./scenario";
import { scenarios } from "./scenarios";
import { scoreScenario, totalsOf, type Group } from "./score-scenario";

/** Floors, not the present score: that is printed by `npm run -s score`. Expectations: common practice, no source. */
function shares(list: readonly Scenario[]): Readonly<Record<Group, number>> {
  const totals = Object.entries(totalsOf(list.map((one) => scoreScenario(one))));
  return Object.fromEntries(totals.map(([group, { count, of }]) => [group, count / of])) as Record<
    Group,
    number
  >;
}

describe("the scenarios looked at", () => {
  const share = shares(scenarios);

  it("have a right first cause and the right one change, or rightly none, in nine of ten", () => {
    expect(share.first).toBeGreaterThanOrEqual(0.9);
    expect(share.change).toBeGreaterThanOrEqual(0.9);
  });

  it("get a sensible number and the cautions that are due in eight of ten", () => {
    expect(share.number).toBeGreaterThanOrEqual(0.8);
    expect(share.cautions).toBeGreaterThanOrEqual(0.8);
  });

  it("get nothing dangerous; every contradiction is said, every inspector comes first", () => {
    expect(share.danger).toBe(0);
    expect(share.flags).toBe(1);
    expect(share.inspector).toBe(1);
  });
});

/** Totals only: whoever looks at a row of these has tuned on it. */
describe("the scenarios kept back", () => {
  const share = shares(keptBack);

  it.each(["first", "change", "number", "flags", "cautions", "inspector"] as const)(
    "hold in three of four: %s",
    (group) => expect(share[group]).toBeGreaterThanOrEqual(0.75),
  );

  it("get nothing dangerous", () => expect(share.danger).toBe(0));
});
