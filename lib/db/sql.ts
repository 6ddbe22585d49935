import { Prisma } from "@/prisma/generated/client";
import type { Db, Tx } from "./client";

/** A piece of SQL with its values beside it, never inside it; pieces go into pieces. */
export type Sql = Prisma.Sql;
export const sql = Prisma.sql;
export const noSql: Sql = Prisma.empty;

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
  return db.$queryRaw<T[]>(query);
}

/** How many rows a statement changed. */
export function change(tx: Db | Tx, statement: Sql): Promise<number> {
  return tx.$executeRaw(statement);
}
