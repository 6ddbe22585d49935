import { MOST_JSON_BYTES } from "@/lib/base";
import { refused, shown, type CaseAnswer } from "./case-answer";

/** The same as for any JSON that comes in; the largest drawing that is measured is about half of it. */
export const MOST_CASE_BYTES = MOST_JSON_BYTES;
/** No case goes half as deep. */
const DEEPEST = 64;

/**
 * The JSON of a case from its bytes (UTF-8, with or without a byte order mark) or its text. Fails on what is empty, too
 * large, nested too deep, UTF-16, or no JSON; the lines speak of the whole, "(top)".
 */
export function readCaseText(source: Uint8Array | string): CaseAnswer {
  if (source.length > MOST_CASE_BYTES) return tooLarge();
  if (typeof source !== "string" && isTwoByte(source))
    return refused(["(top): not UTF-8 text. Save the case as UTF-8."]);
  const text = (typeof source === "string" ? source : new TextDecoder().decode(source)).replace(
    /^\uFEFF/,
    "",
  );
  if (text.trim() === "") return refused(["(top): not JSON (it is empty)"]);
  if (depthOf(text) > DEEPEST) return refused([`(top): nested deeper than ${DEEPEST} levels; no case is`]);
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch (error) {
    return refused([`(top): not JSON (${error instanceof Error ? reasonOf(error) : "?"})`]);
  }
}

export function tooLarge(): CaseAnswer<never> {
  return refused([`(top): larger than ${MOST_CASE_BYTES / 2 ** 20} MB; no case is`]);
}

/** Two-byte text shows its mark, or a zero in every other byte of plain letters. */
function isTwoByte(bytes: Uint8Array): boolean {
  return bytes[0] === 0xff || bytes[0] === 0xfe || bytes.subarray(0, 4).includes(0);
}

/** How deep brackets nest, those within text left out. Counted before parsing, and without recursion. */
function depthOf(text: string): number {
  let depth = 0;
  let deepest = 0;
  let inText = false;
  for (let i = 0; i < text.length; i += 1) {
    const sign = text[i];
    if (sign === '"') inText = !inText;
    else if (inText) i += sign === "\\" ? 1 : 0;
    else if (sign === "[" || sign === "{") deepest = Math.max(deepest, (depth += 1));
    else if (sign === "]" || sign === "}") depth -= 1;
  }
  return deepest;
}

/** The parser's reason quotes the text, line ends and all. */
function reasonOf({ message }: Error): string {
  return shown(message.replace(/ is not valid JSON$/, ""), 120);
}
