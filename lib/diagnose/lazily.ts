/** A value worked out when it is first asked for, then kept. */
export function lazily<T>(make: () => T): () => T {
  let kept: { readonly value: T } | null = null;
  return () => (kept ??= { value: make() }).value;
}
