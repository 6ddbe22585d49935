/**
 * One schema, two databases: prisma/schema.prisma is written for SQLite, and what PostgreSQL takes is made from it. JSON is
 * kept there as the text it was written as (json, not jsonb), so that what is sealed and archived is the same on both.
 */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../..", import.meta.url));
export const schemaPath = path.join(root, "prisma/schema.prisma");
/** Where the second schema is written to be generated from, and its client. */
export const postgresSchemaPath = path.join(root, "prisma/generated/postgresql.prisma");

export const engineOfUrl = (url) => (/^postgres(ql)?:\/\//.test(url) ? "postgresql" : "sqlite");

export const migrationsOf = (engine) =>
  path.join(root, engine === "postgresql" ? "prisma/migrations-postgresql" : "prisma/migrations");

/** The schema as one of the databases takes it. */
export function schemaText(engine) {
  const text = readFileSync(schemaPath, "utf8");
  if (engine === "sqlite") return text;
  return text
    .replace(/output( +)= "\.\/generated"/, 'output$1= "./postgresql"')
    .replace('provider = "sqlite"', 'provider = "postgresql"')
    .replace(/^(\s+\w+\s+Json\??)(\s|$)/gm, "$1 @db.Json$2");
}

export function writePostgresSchema() {
  if (!existsSync(path.dirname(postgresSchemaPath))) mkdirSync(path.dirname(postgresSchemaPath));
  writeFileSync(postgresSchemaPath, schemaText("postgresql"));
}
