"use client";

import { startTransition, useDeferredValue, useEffect, useMemo, useState } from "react";
import type { AssessContext, BeadContent, PhotoFacts } from "@/lib/assess";
import type { ImperfectionId } from "@/lib/trade";
import { benchCode } from "./bench-code";
import type { FirstAnswer } from "./bench-assessment";
import type { EarlyAssessment } from "./shared";

/**
 * Sizes, causes and verdict of what is on the screen. After a mark in the same frame; what is typed never waits for it. The
 * ranking of the causes takes a few milliseconds; their reasons and the checks are worked out where they are shown. Until
 * the code for it is here, the server's answer stands.
 */
export function useAssessment(
  content: BeadContent,
  photos: readonly PhotoFacts[],
  { shopCounts, shopSets }: Pick<AssessContext, "shopCounts" | "shopSets">,
  first: FirstAnswer,
): EarlyAssessment {
  const code = useCode();
  const settled = settledContent(content, useDeferredValue(content));
  return useMemo(() => {
    if (code === null) return { ...first, photos: [], likely: [], full: null };
    const full = code.benchAssessment(settled, photos, { shopCounts, shopSets });
    const { diagnosis, stops, answer } = full;
    let likely: readonly ImperfectionId[] | null = null;
    return {
      ...{ photos: full.photos, stops, answer, full },
      // Ranked when somebody is asked for a name, not at every mark.
      get likely() {
        return (likely ??= diagnosis.ok
          ? code.likelyMarks(diagnosis.value.causes, settled.setup.process)
          : []);
      },
    };
    // The photos' facts never change for one id, so the content alone decides.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [code, settled, shopCounts, shopSets, first]);
}

/** The code that works it out, null until it is here. Its first answer takes a moment, and nothing waits for that. */
function useCode() {
  const [code, setCode] = useState(() => benchCode.now());
  useEffect(() => {
    let gone = false;
    void benchCode.arrival().then((here) => {
      if (!gone) startTransition(() => setCode(here));
    });
    const stop = benchCode.loadAtRest();
    return () => {
      gone = true;
      stop();
    };
  }, []);
  return code;
}

/**
 * What is assessed now: the newest where a drawing alone is newer, for a frame of its own with the mark and without its size
 * takes longer than the size. Of everything that is typed the one before, until there is time.
 */
export function settledContent(newest: BeadContent, before: BeadContent): BeadContent {
  const { photos: _newest, ...typed } = newest;
  const isTyped = Object.entries(typed).some(([name, value]) => before[name as keyof BeadContent] !== value);
  return isTyped ? before : newest;
}
