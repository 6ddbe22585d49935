import { column, joined, sql, type Sql } from "@/lib/db";
import type { BeadFilter } from "./bead-filter";

interface Step {
  readonly name: "place" | "number" | "titleKey" | "welderKey";
  readonly down: boolean;
}
export type BeadOrder = NonNullable<BeadFilter["sort"]>;

/** Columns of each order; the last one names exactly one bead, so that a page can begin after it. Equals come newest first. */
const orders: Readonly<Record<BeadOrder, readonly Step[]>> = {
  newest: [{ name: "place", down: true }],
  oldest: [{ name: "place", down: false }],
  number: [{ name: "number", down: false }],
  "number-down": [{ name: "number", down: true }],
  title: [
    { name: "titleKey", down: false },
    { name: "place", down: true },
  ],
  // The order above from its other end, so that one index serves both.
  "title-down": [
    { name: "titleKey", down: true },
    { name: "place", down: false },
  ],
  welder: [
    { name: "welderKey", down: false },
    { name: "place", down: true },
  ],
  "welder-down": [
    { name: "welderKey", down: true },
    { name: "place", down: false },
  ],
};

/** Where a page begins or ends: the values of one bead in the order's columns. */
export type Key = readonly (string | number)[];

const turned = (steps: readonly Step[]): readonly Step[] =>
  steps.map(({ name, down }) => ({ name, down: !down }));
const stepsOf = (order: BeadOrder, backwards: boolean): readonly Step[] =>
  backwards ? turned(orders[order]) : orders[order];

export function orderBy(order: BeadOrder, backwards = false): Sql {
  const steps = stepsOf(order, backwards);
  return joined(
    steps.map(({ name, down }) => (down ? sql`${column(name, "f")} DESC` : sql`${column(name, "f")} ASC`)),
    ",",
  );
}

/** The rows behind one bead in an order. The first column's bound stands alone too: by it the index is entered. */
export function behind(order: BeadOrder, key: Key, backwards = false): Sql {
  const beyond = ({ name, down }: Step, value: string | number | undefined): Sql =>
    down ? sql`${column(name, "f")} < ${value}` : sql`${column(name, "f")} > ${value}`;
  const [first, last] = stepsOf(order, backwards);
  if (!first) return sql`1 = 1`;
  if (!last) return beyond(first, key[0]);
  const from = first.down
    ? sql`${column(first.name, "f")} <= ${key[0]}`
    : sql`${column(first.name, "f")} >= ${key[0]}`;
  return sql`${from} AND (${beyond(first, key[0])} OR ${beyond(last, key[1])})`;
}

/** The columns a key is made of. */
export const keyColumns = (order: BeadOrder): readonly Step["name"][] =>
  orders[order].map(({ name }) => name);

/** A key as it stands in an address, and back; null for one that no page of this order wrote. */
export function writeKey(key: Key): string {
  return Buffer.from(JSON.stringify(key)).toString("base64url");
}

export function readKey(text: string, order: BeadOrder): Key | null {
  try {
    const parsed: unknown = JSON.parse(Buffer.from(text, "base64url").toString("utf8"));
    const names = keyColumns(order);
    const right = (value: unknown, i: number): boolean =>
      names[i] === "number" ? Number.isSafeInteger(value) : typeof value === "string" && value.length < 400;
    return Array.isArray(parsed) && parsed.length === names.length && parsed.every(right)
      ? (parsed as unknown as Key)
      : null;
  } catch {
    return null;
  }
}
