import { beforeAll, describe, expect, it } from "vitest";
import { archiveOf } from "@/lib/archive";
import { createBead, getBead, getBeads, staleBeads, unreadableBeads } from "@/lib/beads";
import { workAgain } from "@/lib/beads/work-again";
import { countBeads, findPage, readFilter, wholePage } from "@/lib/find";
import { useFreshDb } from "../../setup/fresh-db";
import { bytesOf, listBeads } from "../../setup/stored-beads";

const fresh = useFreshDb();
const ids: string[] = [];
const { filter } = readFilter(new URLSearchParams());
const page = { at: "start", size: 50 } as const;

/** One way each to spoil a row, as a bad disk or another program would. @sqlite: PostgreSQL lets no such value into a column. */
const faults = {
  json: `UPDATE "Bead" SET "setup" = '{"process": "fca' WHERE "id" = ?`,
  shape: `UPDATE "Bead" SET "judgement" = '{"readings": "many"}' WHERE "id" = ?`,
  date: `UPDATE "Bead" SET "createdAt" = 'not a day' WHERE "id" = ?`,
  blob: `UPDATE "Bead" SET "setup" = X'00FF' WHERE "id" = ?`,
} as const;

beforeAll(async () => {
  for (let i = 0; i < 6; i += 1) {
    const made = await createBead(fresh().pen, { title: `Lap ${i}` });
    if (!made.ok) throw new Error("no bead");
    ids.push(made.value.id);
  }
  let at = 1;
  for (const fault of Object.values(faults)) await fresh().db.$executeRawUnsafe(fault, ids[at++]);
  await workAgain(fresh().db);
});

describe("rows that nobody can read", () => {
  it("are told apart, with what is wrong, and the others are not among them", async () => {
    const found = await unreadableBeads(fresh().db);
    expect(found.map(({ number }) => number)).toEqual([2, 3, 4, 5]);
    for (const one of found) expect(one.id).toBe(ids[one.number - 1]);
    // What is unreadable is waited for no longer.
    expect(await staleBeads(fresh().db)).toBe(0);
  });

  it("stand in the list as what they are, and take no other down", async () => {
    const { beads } = await findPage(fresh().db, filter, {}, page);
    expect(beads.map(({ number, unreadable }) => [number, unreadable]).sort()).toEqual([
      [1, false],
      [2, true],
      [3, true],
      [4, true],
      [5, true],
      [6, false],
    ]);
    expect((await countBeads(fresh().db, filter, {})).found).toBe(6);
  });

  it("are left out of what needs a whole bead, and named there", async () => {
    const whole = await wholePage(fresh().db, filter, {}, page);
    expect(whole.beads.map(({ bead }) => bead.number).sort()).toEqual([1, 6]);
    expect([...whole.unreadable].sort()).toEqual([2, 3, 4, 5]);
    const beads = await getBeads(fresh().db, ids);
    expect(beads.map(({ number }) => number)).toEqual([1, 6]);
    expect(await getBead(fresh().db, ids[1]!)).toBeNull();
    const archive = await archiveOf(fresh().folder, await listBeads(fresh().db), []);
    expect(archive.ok && (await bytesOf(archive.value)).length).toBeGreaterThan(100);
  });

  it("are readable again once they are put right", async () => {
    await fresh().db
      .$executeRawUnsafe(`UPDATE "Bead" SET "setup" = (SELECT "setup" FROM "Bead" WHERE "number" = 1)
      WHERE "number" IN (2, 5)`);
    await workAgain(fresh().db);
    expect((await unreadableBeads(fresh().db)).map(({ number }) => number)).toEqual([3, 4]);
    expect((await getBead(fresh().db, ids[1]!))?.number).toBe(2);
  });
});
