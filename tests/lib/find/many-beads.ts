import { expect } from "vitest";
import { growShop } from "@/lib/demo/grow-shop";
import {
  beadSlices,
  countBeads,
  findPage,
  recordedChoices,
  trendCounts,
  type BeadFilter,
  type PageAt,
} from "@/lib/find";
import { trendFigures } from "@/lib/trends";
import type { Db } from "@/lib/db";
import type { Pen } from "@/lib/store";

export const grow = (pen: Pen, beads: number) =>
  growShop(pen, { beads, seed: 11, until: new Date("2026-11-26T12:00:00Z") });

/** Every page of a list from one end to the other, by the places the pages themselves name. */
export async function walk(
  db: Db,
  filter: BeadFilter,
  from: "start" | "end",
  size = 48,
  lookAhead = 1000,
): Promise<string[]> {
  const ids: string[] = [];
  for (let at: PageAt = from; ;) {
    const { beads, next, previous } = await findPage(db, filter, {}, { at, size, lookAhead });
    const page = beads.map(({ id }) => id);
    if (from === "start") ids.push(...page);
    else ids.unshift(...page);
    const on: string | null = from === "start" ? next : previous;
    if (on === null) return ids;
    at = from === "start" ? { after: on } : { before: on };
  }
}

/** Home page, filters, trends and exports answer over so many beads, and agree with each other. */
export async function expectAnswers(db: Db, beads: number): Promise<void> {
  expect(await countBeads(db, {}, {})).toEqual({ found: beads, all: beads });
  const first = await findPage(db, {}, {}, { at: "start", size: 48 });
  expect(first.beads).toHaveLength(Math.min(48, beads));
  expect(first.beads.every(({ said }) => said !== null)).toBe(true);
  const forwards = await walk(db, { sort: "title" }, "start");
  expect(new Set(forwards).size).toBe(beads);
  expect(await walk(db, { sort: "title" }, "end")).toEqual(forwards);
  const filter: BeadFilter = { joint: "tee", imperfection: "undercut" };
  const { found } = await countBeads(db, filter, {});
  expect(await walk(db, filter, "start")).toHaveLength(found);
  expect(found).toBeGreaterThan(0);
  expect((await countBeads(db, { q: "cold lap" }, {})).found).toBeGreaterThan(0);
  const counts = await trendCounts(db, {}, {}, "welder");
  expect(counts.groups.reduce((sum, group) => sum + group.beads, 0)).toBe(beads);
  expect(trendFigures(counts, { period: "week", most: 8 }).chart.ok).toBe(true);
  expect((await recordedChoices(db, {})).welder).toHaveLength(15);
  let sent = 0;
  for await (const slice of beadSlices(db, {}, {})) sent += slice.length;
  expect(sent).toBe(beads);
}
