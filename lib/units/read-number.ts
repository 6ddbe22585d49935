import type { UnitsIssueCode } from "./issue";

export type NumberReading =
  | { readonly value: number }
  | { readonly code: UnitsIssueCode; readonly data?: Readonly<Record<string, string | number>> };

const DECIMAL = /^(?:\d+[.,]?\d*|[.,]\d+)$/;
const FRACTION = /^(?:(\d+)(?: | ?- ?))?(\d+) ?\/ ?(\d+)$/;
/** One comma and exactly three digits after it: a decimal comma or a thousands separator, nobody can tell. */
const EITHER_COMMA = /^[1-9]\d{0,2},\d{3}$/;
const GROUPED = /^\d{1,3}(?:[., ]\d{3})+(?:[.,]\d*)?$/;

/**
 * A tidied, unsigned number as people write it: "3.2", "3,2", ".035", "1/8", "1 1/8", "1-1/8".
 * A point is always a decimal point. A comma is a decimal comma unless it could group thousands.
 */
export function readNumber(text: string): NumberReading {
  const fraction = FRACTION.exec(text);
  if (fraction) {
    const [, whole = "0", above = "0", below = "0"] = fraction;
    if (Number(below) === 0) return { code: "divided-by-zero" };
    return { value: Number(whole) + Number(above) / Number(below) };
  }
  if (EITHER_COMMA.test(text)) {
    return {
      code: "number-ambiguous",
      data: { decimal: text.replace(",", "."), whole: text.replace(",", "") },
    };
  }
  if (DECIMAL.test(text)) return { value: Number(text.replace(",", ".")) };
  if (GROUPED.test(text)) return { code: "number-grouped" };
  if (/\d.*-.*\d/.test(text)) return { code: "number-is-range" };
  return { code: "number-not-understood" };
}

/** Whether the text is a fraction or a mixed number. */
export function isFraction(text: string): boolean {
  return FRACTION.test(text);
}
