import { writeTogether, type Db, type Tx } from "@/lib/db";
import { movedTables, type MovedTable } from "./tables";

type Row = Readonly<Record<string, unknown>>;

/** What all tables of a client have in common; each is one. */
interface Table {
  count(): Promise<number>;
  findMany(args: object): Promise<Row[]>;
  createMany(args: { data: readonly Row[] }): Promise<unknown>;
}

const tableOf = (db: Db | Tx, name: MovedTable): Table => db[name] as unknown as Table;
const names = Object.keys(movedTables) as readonly MovedTable[];

const SLICE = 200;

/** Rows in each table. */
export async function countTables(db: Db): Promise<Readonly<Record<string, number>>> {
  const counts: Record<string, number> = {};
  for (const name of names) counts[name] = await tableOf(db, name).count();
  return counts;
}

/** Copies every row, slice by slice. `onProgress` is told after each. */
export async function copyTables(
  from: Db,
  to: Db,
  onProgress: (table: string, rows: number) => void,
): Promise<void> {
  for (const name of names) {
    let rows = 0;
    for await (const slice of slicesOf(from, name)) {
      // A bead may point to one that comes later, so that is told when all of them are there.
      const data = name === "bead" ? slice.map((row) => ({ ...row, previousId: null })) : slice;
      await writeTogether(to, (tx) => tableOf(tx, name).createMany({ data }));
      rows += slice.length;
      onProgress(name, rows);
    }
  }
  await pointBack(from, to);
}

/** The rows of a table in the order of its key. One of two keys (a member of a group) is read whole: there are few. */
async function* slicesOf(db: Db, name: MovedTable): AsyncGenerator<readonly Row[]> {
  const key = movedTables[name];
  const table = tableOf(db, name);
  if (name === "groupMember") {
    const rows = await table.findMany({});
    if (rows.length > 0) yield rows;
    return;
  }
  for (let after: unknown = null; ;) {
    const where = after === null ? {} : { where: { [key]: { gt: after } } };
    const rows = await table.findMany({ ...where, orderBy: { [key]: "asc" }, take: SLICE });
    const last = rows.at(-1);
    if (!last) return;
    yield rows;
    after = last[key];
  }
}

async function pointBack(from: Db, to: Db): Promise<void> {
  for (let after = ""; ;) {
    const rows = await from.bead.findMany({
      where: { previousId: { not: null }, id: { gt: after } },
      orderBy: { id: "asc" },
      take: SLICE,
      select: { id: true, previousId: true, updatedAt: true },
    });
    const last = rows.at(-1);
    if (!last) return;
    await writeTogether(to, async (tx) => {
      for (const { id, previousId, updatedAt } of rows)
        await tx.bead.update({ where: { id }, data: { previousId, updatedAt } });
    });
    after = last.id;
  }
}
