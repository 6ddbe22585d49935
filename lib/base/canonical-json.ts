/**
 * JSON text that depends on the content alone: keys sorted by code unit, no white space. Values must be plain JSON;
 * -0 becomes 0, as JSON.stringify has it.
 */
export function canonicalJson(value: unknown): string {
  return JSON.stringify(sorted(value));
}

function sorted(value: unknown): unknown {
  if (typeof value !== "object" || value === null) return value;
  if (Array.isArray(value)) return value.map(sorted);
  // Without a prototype a key named "__proto__" is a key like any other.
  const copy = Object.create(null) as Record<string, unknown>;
  for (const [key, part] of Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
    copy[key] = sorted(part);
  return copy;
}
