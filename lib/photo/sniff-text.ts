/** What kind of text the first bytes are, in words; null when they are not text. */
export function looksLikeText(head: Uint8Array): string | null {
  const text = decodeText(head);
  if (text === null) return null;
  const start = text.trimStart().toLowerCase();
  if (/<svg[\s>]/.test(start)) return "an SVG drawing";
  if (/^(<!doctype html|<html|<head|<body|<script|<!--|<iframe|<img)/.test(start)) return "a web page";
  if (/^<\?php/.test(start) || start.startsWith("#!")) return "a script";
  if (start.startsWith("<?xml")) return "an XML file";
  return "plain text";
}

/** UTF-8 or UTF-16 with a byte order mark, without control characters (they tell bytes from text); a character cut off at the end is forgiven. */
function decodeText(head: Uint8Array): string | null {
  const [first, second] = head;
  const encoding =
    first === 0xff && second === 0xfe ? "utf-16le" : first === 0xfe && second === 0xff ? "utf-16be" : "utf-8";
  try {
    const text = new TextDecoder(encoding, { fatal: true }).decode(head, { stream: true });
    return text !== "" && !/[\x00-\x08\x0e-\x1a\x1c-\x1f]/.test(text) ? text : null;
  } catch {
    return null;
  }
}
