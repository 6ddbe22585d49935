import type { UnitsIssue, UnitsIssueCode } from "./issue";

type Data = UnitsIssue["data"];
const bound = (data: Data, which: "min" | "max") => `${data[which] ?? ""} ${data["unit"] ?? ""}`.trim();

/** One clear sentence about what to type, per refusal. */
export const unitsSentences: Readonly<Record<UnitsIssueCode, (data: Data) => string>> = {
  "number-missing": ({ example }) => `Nothing was typed. Type a number such as ${example}.`,
  "number-not-understood": ({ text, example }) =>
    `“${text}” was not understood. Type a number such as ${example}.`,
  "number-negative": ({ text, instead }) =>
    `“${text}” is below zero. ${instead ?? "Type it without the minus sign."}`,
  "number-zero": ({ example }) =>
    `Zero is not possible here. Type a number such as ${example}, or leave the field empty if it is not known.`,
  "number-too-small": (data) =>
    `“${data["text"]}” is less than ${bound(data, "min")}. Check the number and its unit, for example ${data["example"]}.`,
  "number-too-large": (data) =>
    `“${data["text"]}” is more than ${bound(data, "max")}. Check the number and its unit, for example ${data["example"]}.`,
  "number-ambiguous": ({ text, decimal, whole }) =>
    `“${text}” can be read two ways. Type ${decimal} or ${whole}, with a point for decimals.`,
  "number-grouped": ({ text }) => `“${text}” has separators between thousands. Type the digits without them.`,
  "number-is-range": ({ text }) =>
    `“${text}” is a range. Type the one value that was read; leave the field empty if it is not known.`,
  "divided-by-zero": ({ text, example }) => `“${text}” divides by zero. Type a number such as ${example}.`,
  "unit-unknown": ({ unit, example }) => `The unit “${unit}” is not known here. Type ${example}.`,
  "gauge-unknown": ({ text, first, last }) =>
    `“${text}” is not in the sheet gauge table, which runs from ${first} to ${last}. Type the thickness in mm or in.`,
  "clock-out-of-range": ({ text, example }) =>
    `“${text}” has more than 59 minutes or seconds. Type ${example}.`,
};

export function unitsSentence(issue: UnitsIssue): string {
  return unitsSentences[issue.code](issue.data);
}
