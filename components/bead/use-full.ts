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
  return useMemo(
    () => full ?? benchAssessment(toContent(state), state.photos, shopKnows),
    [full, state, shopKnows],
  );
}
