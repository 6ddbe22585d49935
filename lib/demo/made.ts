import type { Result } from "@/lib/base";
import { recordSentence, type RecordIssue } from "@/lib/store";

/** What was made; the demo is refused nothing, so a refusal is our own mistake. */
export function made<T>(result: Result<T, RecordIssue>): T {
  if (!result.ok) throw new Error(result.issues.map(recordSentence).join(" "));
  return result.value;
}

export const daysAgo = (days: number): Date => new Date(Date.now() - days * 86_400_000);
/** A calendar day, "2026-11-25"; days ahead count negative. */
export const dayAgo = (days: number): string => daysAgo(days).toISOString().slice(0, 10);
