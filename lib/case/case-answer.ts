/** A value, or what is wrong with the case: lines of the form "path: sentence". */
export type CaseAnswer<T = unknown> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly lines: readonly string[] };

/** More lines than this help nobody: the first of them are put right first. */
const MOST_LINES = 12;

/** A refusal with its lines, each once, and after the first dozen only how many more there are. */
export function refused(lines: readonly string[]): { readonly ok: false; readonly lines: readonly string[] } {
  const once = [...new Set(lines)];
  const more = once.length - MOST_LINES;
  return { ok: false, lines: more > 0 ? [...once.slice(0, MOST_LINES), `and ${more} more`] : once };
}

/** One line: where in the case, as names and indices joined by points, and the sentence. */
export function lineAt(path: readonly PropertyKey[], sentence: string): string {
  return `${path.map((step) => shown(String(step))).join(".") || "(top)"}: ${sentence}`;
}

/** Somebody's text, on one line and cut after `most` letters: it is printed in a terminal. */
export function shown(text: string, most = 60): string {
  const plain = text.slice(0, most + 1).replace(/[\p{C}\s]+/gu, " ");
  return plain.length > most ? `${plain.slice(0, most)}…` : plain;
}
