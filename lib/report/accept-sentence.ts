import type { AcceptIssue, AcceptIssueCode } from "@/lib/accept";

const sentences: Readonly<Record<AcceptIssueCode, (issue: AcceptIssue) => string>> = {
  "bad-input": ({ path, data }) =>
    `The judge could not read ${path.join(" › ") || "this record"} (${data["reason"] ?? data["message"] ?? "not understood"}). Correct it and the verdict comes back.`,
  "unknown-criteria": () => "The chosen criteria set is not here any more. Choose another one.",
  "bad-setting": ({ path, data }) =>
    `The setting ${String(path.at(-1) ?? data["setting"] ?? "")} has a value this criteria set does not know. Choose one of those offered.`,
};

/** Why a chosen criteria set gives no verdict, in a sentence with what to do. */
export function acceptSentence(issue: AcceptIssue): string {
  return sentences[issue.code](issue);
}
