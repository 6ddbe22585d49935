import { beforeAll, describe, expect, it } from "vitest";
import { factsDiffering } from "@/lib/beads";
import { engineOf, tellEngine } from "@/lib/db/engine";
import { growShop } from "@/lib/demo/grow-shop";
import { useFreshDb } from "../../setup/fresh-db";
import { storePlainPhotos } from "../../setup/plain-photos";

const fresh = useFreshDb();
let beads: readonly { readonly id: string; readonly number: number; readonly previousId: string | null }[] =
  [];

beforeAll(async () => {
  const { pen, folder } = fresh();
  const photos = await storePlainPhotos(pen.db, folder);
  await growShop(pen, { beads: 60, seed: 5, until: new Date("2026-11-26T12:00:00Z"), photos });
  const select = { id: true, number: true, previousId: true } as const;
  beads = await pen.db.bead.findMany({ select, orderBy: { number: "asc" } });
});

const change = (sql: string) => fresh().db.$executeRawUnsafe(sql);
const ids = () => beads.map(({ id }) => id);

async function oneByOne(): Promise<ReadonlySet<string>> {
  const differing = new Set<string>();
  for (const id of ids()) for (const one of await factsDiffering(fresh().db, [id])) differing.add(one);
  return differing;
}
const numbers = (differing: ReadonlySet<string>): number[] =>
  beads.filter(({ id }) => differing.has(id)).map(({ number }) => number);

describe("what lists say of many beads, worked out again", () => {
  it("is what it is of each by itself, whatever of it was changed", async () => {
    const { db } = fresh();
    expect((await factsDiffering(db, ids())).size).toBe(0);
    const kept = await db.beadFacts.findMany({ where: { confirmedCause: { not: null } } });
    const last = await db.beadFound.findFirstOrThrow({ orderBy: { number: "desc" } });
    const confirmed = kept.find(({ number }) => number > 7 && number !== last.number)!;
    await change(`UPDATE "BeadFacts" SET "marks" = "marks" + 1 WHERE "number" = 3`);
    await change(`UPDATE "BeadFacts" SET "stamp" = 'older', "marks" = 99 WHERE "number" = 4`);
    await change(`DELETE FROM "BeadFacts" WHERE "number" = 5`);
    await change(
      `UPDATE "BeadFound" SET "count" = "count" + 1 WHERE "number" = (SELECT MAX("number") FROM "BeadFound")`,
    );
    await change(`UPDATE "BeadFacts" SET "welder" = 'Somebody' WHERE "number" = 7`);
    await change(`UPDATE "BeadFacts" SET "confirmedCause" = NULL WHERE "number" = ${confirmed.number}`);
    const together = await factsDiffering(db, ids());
    expect(together).toEqual(await oneByOne());
    expect(numbers(together)).toEqual([3, 5, 7, confirmed.number, last.number]);
  });

  it("says nothing of a bead that nobody can read or whose answer nobody can, and all of those beside it", async () => {
    const { db } = fresh();
    const before = await factsDiffering(db, ids());
    const tries = beads.filter(({ previousId }) => previousId !== null);
    const spoilt = tries.at(-1)!;
    await change(`UPDATE "Bead" SET "judgement" = '{"tried": 7}' WHERE "id" = '${spoilt.id}'`);
    await change(`UPDATE "Bead" SET "setup" = '{"process": 7}' WHERE "number" = 3`);
    const together = await factsDiffering(db, ids());
    expect(together).toEqual(await oneByOne());
    expect(numbers(before)).toContain(3);
    const silent = [3, spoilt.number, beads.find(({ id }) => id === spoilt.previousId)!.number];
    expect(numbers(together)).toEqual(numbers(before).filter((number) => !silent.includes(number)));
    expect(together.size).toBeGreaterThanOrEqual(2);
  });

  it("is no answer where the database does not answer", async () => {
    const { db } = fresh();
    const gone = new Proxy(db, {
      get: (of, name) =>
        name === "beadFound"
          ? { findMany: () => Promise.reject(new Error("the connection is gone")) }
          : Reflect.get(of, name),
    });
    tellEngine(gone, engineOf(db));
    await expect(factsDiffering(gone, ids())).rejects.toThrow("the connection is gone");
  });
});
