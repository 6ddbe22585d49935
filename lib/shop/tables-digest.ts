import { sealedTables } from "@/lib/assess";
import { sha256Text } from "@/lib/store";

/**
 * SHA-256 of plain data, branch by branch: a branch's digest is that of its children's, keys in order. What was hashed
 * stands in `known` by identity, so that a table changed in one place costs the way to that place. Throws on what
 * JSON would drop or bend (a function, NaN): a table with such a thing in it could change unseen.
 */
export function digestOf(value: unknown, known: WeakMap<object, string> = new WeakMap()): string {
  if (value === null || typeof value === "string" || typeof value === "boolean") return JSON.stringify(value);
  if (typeof value === "number" && Number.isFinite(value)) return JSON.stringify(value);
  if (typeof value !== "object") throw new Error(`not plain data: ${typeof value}`);
  const before = known.get(value);
  if (before !== undefined) return before;
  const inner = Array.isArray(value)
    ? `[${value.map((one) => digestOf(one, known)).join()}]`
    : `{${Object.entries(value)
        .filter(([, one]) => one !== undefined)
        .sort(([a], [b]) => (a < b ? -1 : 1))
        .map(([key, one]) => `${JSON.stringify(key)}:${digestOf(one, known)}`)
        .join()}}`;
  const digest = sha256Text(inner);
  known.set(value, digest);
  return digest;
}

let once: string | null = null;

/**
 * SHA-256 of the tables verdicts, sizes and advice rest on, as this version carries them. The shop's own limits travel
 * whole instead. Worked out once: the tables are constants.
 */
export function tablesDigest(): string {
  once ??= digestOf(sealedTables);
  return once;
}
