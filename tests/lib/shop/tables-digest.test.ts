import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { digestOf, tablesDigest } from "@/lib/shop/tables-digest";
import { sealedTables } from "@/lib/assess";
import { inDepth } from "../../setup/in-depth";

type Path = readonly (string | number)[];

function* leaves(value: unknown, at: Path = []): Generator<{ at: Path; value: unknown }> {
  if (value === null || typeof value !== "object") yield { at, value };
  else if (Array.isArray(value)) for (const [i, one] of value.entries()) yield* leaves(one, [...at, i]);
  else for (const [key, one] of Object.entries(value)) yield* leaves(one, [...at, key]);
}

/** The same data with one leaf changed; everything beside the way to it is shared. */
function withLeaf(value: unknown, [step, ...rest]: Path, leaf: unknown): unknown {
  if (step === undefined) return leaf;
  if (Array.isArray(value)) return value.map((one, i) => (i === step ? withLeaf(one, rest, leaf) : one));
  const object = value as Record<string, unknown>;
  return { ...object, [step]: withLeaf(object[step as string], rest, leaf) };
}

/** A law of our own; no published source. */
describe("the seal over the tables", () => {
  const all = [...leaves(sealedTables)];
  const numbers = all.filter(({ value }) => typeof value === "number");

  it("changes with each number in each table", () => {
    const known = new WeakMap<object, string>();
    const whole = digestOf(sealedTables, known);
    expect(whole).toBe(tablesDigest());
    // The ordinary run takes every third number; a table that is left out is left out with all of its.
    const tried = numbers.filter((_, i) => i % inDepth(3, 1) === 0);
    const unseen = tried.filter(
      ({ at, value }) =>
        digestOf(withLeaf(sealedTables, at, (value as number) * 1.0001 + 1e-9), known) === whole,
    );
    expect(unseen).toEqual([]);
    // Every room brings some: a table that was left out would show here first.
    const rooms = Object.fromEntries(
      Object.keys(sealedTables).map((room) => [room, numbers.filter(({ at }) => at[0] === room).length]),
    );
    for (const [room, least] of Object.entries({
      accept: 1000,
      trade: 400,
      measure: 30,
      arc: 60,
      diagnose: 450,
    }))
      expect([room, (rooms[room] ?? 0) >= least, rooms[room]]).toEqual([room, true, rooms[room]]);
  });

  it("changes with each word too: conditions, ids, sources", () => {
    const known = new WeakMap<object, string>();
    const whole = digestOf(sealedTables, known);
    // Words of every table, as the numbers above: the ordinary run takes every seventh.
    const words = all.filter(({ value }) => typeof value === "string");
    for (const { at, value } of words.filter((_, i) => i % inDepth(7, 1) === 0))
      expect(digestOf(withLeaf(sealedTables, at, `${String(value)}.`), known), at.join(".")).not.toBe(whole);
  });

  it("holds what was missing once: US figures, thickness limits, position factors, arc and cause tables", () => {
    const paths = numbers.map(({ at }) => at.join("."));
    for (const part of [
      /^accept\..*\.us$/,
      /thicknessRows.*mm$/,
      /positionFactors/,
      /^arc\.burnOffRows/,
      /linkStrength/,
    ])
      expect(
        paths.some((path) => part.test(path)),
        String(part),
      ).toBe(true);
    expect(all.some(({ at }) => at.join(".").endsWith(".when.0.kind.0"))).toBe(true);
  });

  it("holds every table with a number in it that these rooms keep", async () => {
    const sealed = new Set<unknown>(all.map(({ value }) => value));
    const walk = (value: unknown): void => {
      if (value === null || typeof value !== "object" || sealed.has(value)) return;
      sealed.add(value);
      for (const one of Object.values(value)) walk(one);
    };
    walk(sealedTables);
    const left: string[] = [];
    for (const room of ["trade", "arc", "diagnose"]) {
      const folder = fileURLToPath(new URL(`../../../lib/${room}/tables`, import.meta.url));
      for (const file of readdirSync(folder)) {
        const tables = (await import(`${folder}/${file}`)) as Record<string, unknown>;
        for (const [name, table] of Object.entries(tables))
          if ([...leaves(table)].some(({ value }) => typeof value === "number") && !sealed.has(table))
            left.push(`${room}/${file}: ${name}`);
      }
    }
    expect(left).toEqual([]);
  });

  it("refuses what JSON would drop, and does not care for the order of keys", () => {
    expect(() => digestOf({ table: () => 1 })).toThrow("not plain data");
    expect(() => digestOf({ limit: Number.NaN })).toThrow("not plain data");
    expect(digestOf({ a: 1, b: [2, 3] })).toBe(digestOf({ b: [2, 3], a: 1 }));
    expect(digestOf([2, 3])).not.toBe(digestOf([3, 2]));
    expect(digestOf({ a: ["b"] })).not.toBe(digestOf({ a: "b" }));
  });
});
