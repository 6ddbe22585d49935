/**
 * A pure function that keeps its last answer for each object it is asked about, as long as that object lives: asked again
 * with the same rest, it answers with what it found. For values that are never changed in place, as marks and scales are.
 */
export function remembered<K extends object, Rest extends readonly unknown[], T>(
  make: (key: K, ...rest: Rest) => T,
): (key: K, ...rest: Rest) => T {
  const kept = new WeakMap<K, { readonly rest: Rest; readonly value: T }>();
  return (key, ...rest) => {
    const found = kept.get(key);
    if (found?.rest.every((one, i) => Object.is(one, rest[i]))) return found.value;
    const value = make(key, ...rest);
    kept.set(key, { rest, value });
    return value;
  };
}
