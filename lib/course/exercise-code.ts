/**
 * Letters of a hand-in code. Read off a bench with a dirty visor: no 0/O/Q, 1/I/L, 2/Z, 5/S, 8/B, U/V, and no vowels, so
 * that no code spells a word.
 */
export const codeLetters = "CDFGHJKMNPRTVWXY34679";
export const CODE_LENGTH = 6;

/** A code from random numbers in [0, 1): one for each letter. The chance is the caller's. */
export function exerciseCode(chances: readonly number[]): string {
  return Array.from({ length: CODE_LENGTH }, (_, i) => {
    const at = Math.floor((chances[i] ?? 0) * codeLetters.length);
    return codeLetters[Math.min(codeLetters.length - 1, Math.max(0, at))];
  }).join("");
}

/** A code as somebody typed it, the way it is stored: capitals, without spaces and dashes. */
export function normaliseCode(text: string): string {
  return text
    .replace(/[\s\-–.]/g, "")
    .toUpperCase()
    .slice(0, 20);
}
