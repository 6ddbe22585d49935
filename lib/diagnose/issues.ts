import type { Issue } from "@/lib/base";

export const diagnoseCodes = ["invalid-input", "unknown-question", "unknown-answer"] as const;
export type DiagnoseCode = (typeof diagnoseCodes)[number];
export type DiagnoseIssue = Issue<DiagnoseCode>;

/** Code to sentence; the path is printed beside it. */
export const diagnoseSentences: Readonly<Record<DiagnoseCode, (data: DiagnoseIssue["data"]) => string>> = {
  "invalid-input": ({ reason }) => `This is not as asked for: ${reason}.`,
  "unknown-question": ({ question }) => `There is no question "${question}".`,
  "unknown-answer": ({ question, answer }) => `"${answer}" is not an answer to "${question}".`,
};
