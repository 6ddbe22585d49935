import pg from "pg";
import { expect, it } from "vitest";
import { staleBeads } from "@/lib/beads";
import { growShop } from "@/lib/demo/grow-shop";
import { countSome, findPage, openChanges, recordedChoices } from "@/lib/find";
import { listenTo, rowsRead } from "../../setup/rows-read";
import { usePostgres } from "../../setup/use-postgres";

const postgres = usePostgres();
const BEADS = 6000;
const page = { at: "start", size: 48 } as const;

/**
 * What a list looks at on PostgreSQL, as the database itself counts it: a page, counts that stop at a thousand, answers by
 * stepping through indexes. Own bounds, each a small part of all beads: whoever reads them all is far beyond. A filter passes
 * over what does not fit, so none is promised of it.
 */
it("a list looks at so many rows, however many beads there are", async () => {
  const url = await postgres().newDatabase();
  const db = postgres().open(url);
  await growShop({ db, by: "test" }, { beads: BEADS, seed: 1, until: new Date("2026-11-26T12:00:00Z") });
  const client = new pg.Client(url);
  await client.connect();
  await client.query("VACUUM ANALYZE");
  const asked = listenTo(db as never);
  const works: Readonly<Record<string, readonly [most: number, () => Promise<unknown>]>> = {
    "a page": [600, () => findPage(db, {}, {}, page)],
    "the last page": [600, () => findPage(db, {}, {}, { ...page, at: "end" })],
    "counts that stop": [1100, () => countSome(db, {}, {})],
    "the answers of each question": [1500, () => recordedChoices(db, {})],
    "what waits above it": [100, () => openChanges(db, {}, 3)],
    "what is stale": [10, () => staleBeads(db)],
    "a person's page": [600, () => findPage(db, {}, { welderId: "nobody" }, page)],
  };
  const read: Record<string, number> = {};
  for (const [name, [, work]] of Object.entries(works)) {
    asked.length = 0;
    await work();
    read[name] = await rowsRead(client, [...asked]);
  }
  await client.end();
  console.log(read);
  for (const [name, [most]] of Object.entries(works)) expect(read[name], name).toBeLessThanOrEqual(most);
});
