import { createHash } from "node:crypto";
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
// The engine is plain JavaScript, because the start script needs it before anything is compiled.
import { applyMigrations } from "@/lib/cli/schema-engine.mjs";

const root = fileURLToPath(new URL("../..", import.meta.url));
const made = path.join(root, "tests/.out/migrated");

/** Named by what makes it, so that another migration or engine makes another. */
function nameOf(): string {
  const hash = createHash("sha256");
  const migrations = path.join(root, "prisma/migrations");
  for (const file of readdirSync(migrations, { recursive: true, encoding: "utf8" }).sort())
    if (file.endsWith(".sql")) hash.update(file).update(readFileSync(path.join(migrations, file)));
  hash.update(readFileSync(path.join(root, "lib/cli/schema-engine.mjs")));
  return path.join(made, `${hash.digest("hex").slice(0, 16)}.db`);
}

/** Lays an empty database with every migration at `file`: migrated once, then copied. */
export async function layMigrated(file: string): Promise<void> {
  const template = nameOf();
  if (!existsSync(template)) {
    mkdirSync(made, { recursive: true });
    const fresh = `${template}.${process.pid}`;
    await applyMigrations(`file:${fresh}`);
    renameSync(fresh, template);
  }
  copyFileSync(template, file);
}
