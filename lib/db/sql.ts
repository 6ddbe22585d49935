import { Prisma } from "@/prisma/generated/client";
import type { Db, Tx } from "./client";
import { engineOf, type Engine } from "./engine";

/** A piece of SQL with its values beside it, never inside it; pieces go into pieces. */
export type Sql = Prisma.Sql;
export const sql = Prisma.sql;
export const noSql: Sql = Prisma.empty;

/** Stands among the values of a piece for SQL that each database has its own of, until one is asked. */
class Either {
  constructor(readonly of: Readonly<Record<Engine, () => Sql>>) {}
}

/** A piece that is another on each database. */
export const either = (of: Readonly<Record<Engine, () => Sql>>): Sql => sql`${new Either(of)}`;

/** A piece as one database takes it. */
export function sqlFor(engine: Engine, query: Sql): Sql {
  if (!query.values.some((value) => value instanceof Either)) return query;
  const values = query.values.map((value) =>
    value instanceof Either ? sqlFor(engine, value.of[engine]()) : value,
  );
  return new Prisma.Sql(query.strings, values);
}

/** A column of a table by its name in the schema. The name is ours, never a person's: anything else is thrown. */
export function column(name: string, of?: string): Sql {
  if (!/^[A-Za-z]+$/.test(name)) throw new Error(`no column: ${name}`);
  return Prisma.raw(of === undefined ? `"${name}"` : `${of}."${name}"`);
}

/** Pieces one after the other; none of them is nothing. */
export function joined(pieces: readonly Sql[], between: "," | " AND " | " UNION ALL "): Sql {
  return pieces.length === 0 ? noSql : Prisma.join([...pieces], between);
}

/** Rows of a query. What a column holds is the caller's word: SQL has no other. */
export function rowsOf<T>(db: Db | Tx, query: Sql): Promise<T[]> {
  return db.$queryRaw<T[]>(sqlFor(engineOf(db), query));
}

/** How many rows a statement changed. */
export function change(tx: Db | Tx, statement: Sql): Promise<number> {
  return tx.$executeRaw(sqlFor(engineOf(tx), statement));
}

/** SQL that no piece of ours makes: names of tables, commands of one database. Nothing of a person's may stand in it. */
export const rawSql = (text: string): Sql => Prisma.raw(text);
