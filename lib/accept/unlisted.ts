import { imperfectionIds, withoutDocument } from "@/lib/trade";
import type { Observation } from "./types";
import type { Criterion } from "./rule";

/**
 * What was marked but met no rule that applies: a qualified person decides, so that nothing is waved through for want
 * of a clause.
 */
export function unlistedCriterion(left: readonly Observation[]): Criterion {
  const source = withoutDocument("Toeline", "common-practice", {
    clause: "no clause",
    note: "slag is removed before a weld is judged; a shape without a limit is for a qualified person",
  });
  return {
    id: "no-rule",
    clause: "no clause",
    title: "Marked, but without a rule here",
    imperfections: imperfectionIds.filter((id) => left.some((one) => one.imperfection === id)),
    onlyWhenSeen: true,
    variants: [
      { when: [{ setting: "unlisted", is: "accepted" }], tests: [{ test: "allowed" }], source },
      { when: [{ setting: "unlisted", is: "refused" }], tests: [{ test: "none-allowed" }], source },
      { when: [], tests: [{ test: "person-decides" }], source },
    ],
  };
}
