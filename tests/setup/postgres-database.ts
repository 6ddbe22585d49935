import { randomUUID } from "node:crypto";
import { openDb } from "@/lib/db";

/** Database of the run's PostgreSQL with every migration, of which each test file gets a copy. */
export const TEMPLATE = "toeline_migrated";

/** Where the run's PostgreSQL is, a URL without a database; empty: this run is on SQLite. */
export const postgresToTest = (): string => process.env["TOELINE_TEST_POSTGRES"] ?? "";

/** A database of its own with every migration; its URL. It goes with the server, when the run ends. */
export async function newPostgresDatabase(
  server = postgresToTest(),
  name = `t_${randomUUID().slice(0, 8)}`,
): Promise<string> {
  const admin = openDb(`${server}/postgres`);
  try {
    await admin.$executeRawUnsafe(`CREATE DATABASE "${name}" TEMPLATE "${TEMPLATE}"`);
  } finally {
    await admin.$disconnect();
  }
  return `${server}/${name}`;
}
