import path from "node:path";

const OWNERS = `SELECT count(*) AS n FROM "Person" WHERE ("role" = 'owner' OR "also" LIKE '%owner%') AND "userId" IS NOT NULL AND "removedAt" IS NULL`;

/** How many people may open accounts: in the database of a data folder, or in the PostgreSQL at `url`. */
export async function countOwners(folder, url) {
  if (url !== null) {
    const { PrismaPg } = await import("@prisma/adapter-pg");
    const connection = await new PrismaPg({ connectionString: url, max: 1 }).connect();
    try {
      const { rows } = await connection.queryRaw({ sql: OWNERS, args: [], argTypes: [] });
      return Number(rows[0]?.[0] ?? 0);
    } finally {
      await connection.dispose();
    }
  }
  const { default: Database } = await import("better-sqlite3");
  const file = new Database(path.join(folder, "toeline.db"), { readonly: true });
  try {
    return file.prepare(OWNERS).get().n;
  } finally {
    file.close();
  }
}
