import type { Issue } from "./issue";
import type { Result } from "./result";

/** One refusal in words: what a screen or an HTTP body carries of an `Issue`. */
export interface Line {
  readonly code: string;
  /** Path into what was sent, outermost first; absent when the line is about the whole. */
  readonly path?: readonly (string | number)[];
  readonly message: string;
}

export interface Refusal {
  readonly ok: false;
  readonly issues: readonly Line[];
}

/**
 * What the server tells a screen: the value, or why not in lines that can be shown as they are. A `Result` whose
 * sentences have been found; every action, form, upload and save answers with one.
 */
export type Answer<T> = { readonly ok: true; readonly value: T } | Refusal;

/** A refusal that no room has an issue for. */
export function refused(code: string, message: string): Refusal {
  return { ok: false, issues: [{ code, message }] };
}

/** Issues as lines, by the room's own table of sentences. */
export function linesOf<I extends Issue>(
  issues: readonly I[],
  sentence: (one: I) => string,
): readonly Line[] {
  return issues.map((one) => ({
    code: one.code,
    ...(one.path.length > 0 ? { path: one.path } : {}),
    message: sentence(one),
  }));
}

export function answerOf<T, I extends Issue>(result: Result<T, I>, sentence: (one: I) => string): Answer<T> {
  return result.ok ? result : { ok: false, issues: linesOf(result.issues, sentence) };
}

/** All lines as one text, each sentence once. */
export function inWords({ issues }: Refusal): string {
  return [...new Set(issues.map(({ message }) => message))].join(" ");
}
