import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import rooms from "../vitest.config";

const tests = fileURLToPath(new URL("..", import.meta.url));
/** Tests that do more here than in the ordinary run (`in-depth.ts`), and those that run here alone. */
const deeper = readdirSync(tests, { recursive: true, encoding: "utf8" }).filter(
  (file) =>
    /\.deep\.test\.ts$/.test(file) ||
    (/\.test\.tsx?$/.test(file) && readFileSync(path.join(tests, file), "utf8").includes('setup/in-depth"')),
);

/** What is worth its minutes once a day and before a release: properties over many more cases, renders of full size. */
export default defineConfig({
  root: rooms.root!,
  resolve: rooms.resolve!,
  test: {
    include: deeper.map((file) => `tests/${file}`),
    exclude: ["node_modules/**"],
    env: { TOELINE_DEEP: "1" },
    testTimeout: 3_600_000,
    hookTimeout: 3_600_000,
    pool: "forks",
    maxWorkers: 2,
  },
});
