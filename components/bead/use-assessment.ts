"use client";

import { useDeferredValue, useMemo } from "react";
import {
  answerKind,
  assess,
  defaultAssessContext,
  type AnswerKind,
  type AssessContext,
  type Assessment,
  type BeadContent,
  type PhotoFacts,
} from "@/lib/assess";

export interface BenchAssessment extends Assessment {
  /** Set-up findings that should be put right before the next bead. */
  readonly stops: number;
  /** What the diagnosis has to say first; "unlooked" where there is none. */
  readonly answer: AnswerKind;
}

/**
 * Sizes, causes and verdict of what is on the screen. After a mark in the same frame; what is typed never waits for it. The
 * ranking of the causes takes a few milliseconds; their reasons and the checks are worked out where they are shown.
 */
export function useAssessment(
  content: BeadContent,
  photos: readonly PhotoFacts[],
  { shopCounts, shopSets }: Pick<AssessContext, "shopCounts" | "shopSets">,
): BenchAssessment {
  const settled = settledContent(content, useDeferredValue(content));
  return useMemo(() => {
    const assessment = assess(settled, photos, { ...defaultAssessContext, shopCounts, shopSets });
    return { ...assessment, stops: stopsIn(assessment), answer: answerOf(assessment, settled) };
    // The photos' facts never change for one id, so the content alone decides.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [settled, shopCounts, shopSets]);
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

const stopsIn = ({ setup }: Assessment): number =>
  setup.filter((finding) => finding.severity === "stop").length;

function answerOf({ diagnosis }: Assessment, { photos, judgement }: BeadContent): AnswerKind {
  const isMarked = photos.some(({ drawing }) => drawing.marks.length > 0);
  return diagnosis.ok ? answerKind(diagnosis.value, isMarked || judgement.lookedFor.length > 0) : "unlooked";
}
