import type { Answer } from "@/components/course/answer";
import type { Result } from "@/lib/base";
import { recordSentence, type RecordIssue } from "@/lib/record";

/** A record's result for a screen: its sentence found. */
export function answer<T>(result: Result<T, RecordIssue>): Answer<T> {
  if (result.ok) return result;
  const [first] = result.issues;
  if (!first) throw new Error("a refusal without a reason");
  return { ok: false, code: first.code, message: recordSentence(first) };
}
