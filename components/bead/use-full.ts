"use client";

import { useMemo } from "react";
import { benchAssessment, type BenchAssessment } from "./bench-assessment";
import type { EarlyProps } from "./shared";
import { toContent } from "./work-state";

/**
 * The whole assessment. Where a part is shown before the workbench has it (on the server, and while the browser takes over
 * what the server wrote) it is worked out here.
 */
export function useFull({
  assessment: { full },
  state,
  shopKnows,
}: Pick<EarlyProps, "assessment" | "state" | "shopKnows">): BenchAssessment {
  return useMemo(() => full ?? workedOut(state, shopKnows), [full, state, shopKnows]);
}

type Asked = Pick<EarlyProps, "state" | "shopKnows">;

/** By the state it is of: the parts of one page share what the first of them worked out. */
const known = new WeakMap<
  Asked["state"],
  { readonly shopKnows: Asked["shopKnows"]; readonly found: BenchAssessment }
>();

function workedOut(state: Asked["state"], shopKnows: Asked["shopKnows"]): BenchAssessment {
  const before = known.get(state);
  if (before?.shopKnows === shopKnows) return before.found;
  const found = benchAssessment(toContent(state), state.photos, shopKnows);
  known.set(state, { shopKnows, found });
  return found;
}
