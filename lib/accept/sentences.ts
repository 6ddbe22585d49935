import type { AcceptIssue, AcceptIssueCode } from "./verdict";

/** One clear sentence about what to do, per expected failure. */
export const acceptSentences: Readonly<Record<AcceptIssueCode, (issue: AcceptIssue) => string>> = {
  "bad-input": ({ path, data }) =>
    `The case is not understood at ${path.join(".") || "its top"}: ${data["reason"] ?? "wrong"}. Correct it and judge again.`,
  "unknown-criteria": ({ data }) =>
    `There is no criteria set "${data["id"] ?? ""}". Choose one from the list.`,
  "bad-setting": ({ path, data }) =>
    `The setting ${path.at(-1) ?? ""} cannot be "${data["given"] ?? ""}". Choose one of: ${data["choices"] ?? ""}.`,
};

export function acceptSentence(issue: AcceptIssue): string {
  return acceptSentences[issue.code](issue);
}
