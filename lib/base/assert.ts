/** Our own mistake, not the user's: thrown, and caught once at the edge. */
export function invariant(condition: unknown, message: string): asserts condition {
  if (!condition) throw new Error(`broken invariant: ${message}`);
}

/** Makes a `switch` over a union exhaustive for the compiler and loud at run time. */
export function assertNever(value: never): never {
  throw new Error(`unexpected case: ${JSON.stringify(value)}`);
}
