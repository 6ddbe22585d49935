"use client";

import { useState } from "react";
import { isAnswer, type AnswerKind } from "@/lib/assess";
import { benchCode } from "./bench-code";
import { partsOf, type PartId } from "./bench-tabs";
import type { WorkPhoto } from "./work-state";

/** Up to this width the parts take turns on the whole screen; the style sheet says the same. */
const IN_TURNS = "(max-width: 900px)";

/**
 * Which part lies open. A bead that has an answer opens on it, every other on its photo. An answer is `ready` until it
 * was on the screen, and again when it changes its kind.
 */
export function useParts(photos: readonly WorkPhoto[], shownId: string | null, answer: AnswerKind) {
  const [chosen, setChosen] = useState<PartId>(isAnswer(answer) ? "causes" : "photo");
  const [seen, setSeen] = useState<AnswerKind | null>(null);
  const offered = partsOf(photos, chosen, shownId);
  const isShown = offered.beside === "causes";
  if (isShown && seen !== answer) setSeen(answer);
  const choose = (part: PartId) => {
    setChosen(part);
    // Asked for now, whether the page had its rest or not; where it cannot come it is asked for again at rest.
    if (part !== "photo") void benchCode.load().catch(() => undefined);
    // What was scrolled to in one part is nowhere in the next.
    if (window.matchMedia(IN_TURNS).matches) window.scrollTo({ top: 0 });
  };
  return { ...offered, ready: !isShown && isAnswer(answer) && seen !== answer, choose };
}
