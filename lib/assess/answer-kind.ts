import type { Diagnosis } from "@/lib/diagnose";
import { proposal } from "./proposal";

/**
 * What there is to say first of a bead. "inspector": somebody qualified sees it first. "change": one change to try. "ask":
 * something is marked and no cause stands out, so questions come first. "nothing": looked at, and nothing to cure.
 * "unlooked": nobody looked.
 */
export type AnswerKind = "inspector" | "change" | "ask" | "nothing" | "unlooked";

/**
 * @param lookedAt Something is marked, or ticked as looked for and absent: only then is "nothing" an answer.
 */
export function answerKind(diagnosis: Diagnosis, lookedAt: boolean): AnswerKind {
  if (diagnosis.cautions.some(({ level }) => level === "stop")) return "inspector";
  if (proposal(diagnosis) !== null) return "change";
  if (diagnosis.explainable.length > 0) return "ask";
  return lookedAt ? "nothing" : "unlooked";
}

/** Whether somebody who opens the bead should find this first. */
export const isAnswer = (kind: AnswerKind): boolean => ["inspector", "change", "ask"].includes(kind);
