import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import rooms from "../vitest.config";

const tests = fileURLToPath(new URL("..", import.meta.url));
/** Opens the SQLite file itself, to damage it or to fill its disk: what it proves is of that file. */
const ofTheFile = /from "better-sqlite3"|PRAGMA|sqlite_master|`file:|@sqlite/;
const databaseTests = readdirSync(tests, { recursive: true, encoding: "utf8" }).filter((file) => {
  if (!/\.test\.tsx?$/.test(file) || file.startsWith("e2e")) return false;
  const text = readFileSync(path.join(tests, file), "utf8");
  return text.includes("fresh-db") && !ofTheFile.test(text);
});

/** The database tests once more, on a real PostgreSQL. */
export default defineConfig({
  root: rooms.root!,
  resolve: rooms.resolve!,
  test: {
    include: databaseTests.map((file) => `tests/${file}`),
    exclude: ["node_modules/**"],
    globalSetup: ["tests/setup/postgres-global.ts"],
    testTimeout: 600_000,
    hookTimeout: 600_000,
    pool: "forks",
    maxWorkers: 2,
    isolate: true,
  },
});
