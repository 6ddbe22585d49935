/** `npm run migration -- NAME`: writes the migration that brings the database to prisma/schema.prisma. */
import { mkdir, writeFile } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { schemaDrift } from "./schema-engine.mjs";

const name = process.argv[2] ?? "";
if (!/^[a-z0-9_]{3,60}$/.test(name)) {
  console.error(
    "Say what the migration does in lower case with underscores: npm run migration -- add_saved_filters",
  );
  process.exit(2);
}
const { drifted, sql } = await schemaDrift();
if (!drifted) {
  console.log("The migrations already match prisma/schema.prisma; nothing to write.");
  process.exit(0);
}
const stamp = new Date().toISOString().replace(/\D/g, "").slice(0, 14);
const migrations = fileURLToPath(new URL("../../prisma/migrations", import.meta.url));
const folder = path.join(migrations, `${stamp}_${name}`);
await mkdir(folder, { recursive: true });
await writeFile(path.join(folder, "migration.sql"), sql);
console.log(`Wrote prisma/migrations/${stamp}_${name}/migration.sql`);
