/**
 * `npm run migration -- NAME`: writes the migrations that bring both databases to prisma/schema.prisma. Triggers and what
 * else Prisma has no word for are written into both by hand; tests/db/postgresql.test.ts holds them to the same names.
 */
import { mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import { schemaDrift } from "./schema-engine.mjs";
import { migrationsOf } from "./schemas.mjs";

const name = process.argv[2] ?? "";
if (!/^[a-z0-9_]{3,60}$/.test(name)) {
  console.error(
    "Say what the migration does in lower case with underscores: npm run migration -- add_saved_filters",
  );
  process.exit(2);
}
const stamp = new Date().toISOString().replace(/\D/g, "").slice(0, 14);

async function write(engine, url) {
  const { drifted, sql } = await schemaDrift(url);
  if (!drifted) {
    console.log(`The migrations for ${engine} already match prisma/schema.prisma; nothing to write.`);
    return;
  }
  const folder = path.join(migrationsOf(engine), `${stamp}_${name}`);
  await mkdir(folder, { recursive: true });
  // Texts sort by their bytes there as they do in SQLite.
  const text = engine === "postgresql" ? sql.replace(/(" TEXT)\b(?! COLLATE)/g, '$1 COLLATE "C"') : sql;
  await writeFile(path.join(folder, "migration.sql"), text);
  console.log(`Wrote ${path.relative(process.cwd(), folder)}/migration.sql`);
}

await write("sqlite");
// The engine asks a real PostgreSQL; the one of the tests will do.
const { startPostgres } = await import(
  new URL("../../tests/setup/postgres-server.mjs", import.meta.url).href
);
const server = await startPostgres();
try {
  await write("postgresql", server.url("postgres"));
} finally {
  await server.stop();
}
