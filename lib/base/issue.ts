/**
 * An expected failure as data: a code, where it lies, and the numbers that belong to it.
 * The words are added at the edge, from one table per room (code -> sentence), so that no room prints prose
 * and a test can ask whether every code has a sentence.
 */
export interface Issue<Code extends string = string> {
  readonly code: Code;
  /** Path into the input, outermost first. Empty when the issue is about the whole. */
  readonly path: readonly (string | number)[];
  readonly data: Readonly<Record<string, string | number>>;
}

export function issue<Code extends string>(
  code: Code,
  path: readonly (string | number)[] = [],
  data: Readonly<Record<string, string | number>> = {},
): Issue<Code> {
  return { code, path, data };
}
