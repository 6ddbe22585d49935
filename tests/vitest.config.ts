import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { PATIENT_MS } from "./setup/patience";

const here = (file: string): string => fileURLToPath(new URL(file, import.meta.url));
const root = here("..");
/** What costs time on purpose, as the one file names it that uses it; the deep run leaves it as it is. */
const cheap = [
  { find: /^\.\/lock-cost$/, replacement: here("./setup/lock-cost.ts") },
  { find: /^\.\/passwords$/, replacement: here("./setup/passwords.ts") },
];
export const isCheap = (one: { readonly find: string | RegExp }): boolean =>
  cheap.some(({ find }) => find === one.find);
export const alias: { readonly find: string | RegExp; readonly replacement: string }[] = [
  { find: "@", replacement: root.replace(/\/$/, "") },
  // Vitest knows nothing of React's server condition; the marker itself has no content to test.
  { find: "server-only", replacement: here("./setup/server-only.ts") },
  ...cheap,
];

const tests = path.join(root, "tests");
/** Replaces modules, or changes what the process is told from outside by another hand than Vitest's, which takes it back. */
const changesItsProcess =
  /\bvi\.(mock|doMock|resetModules)\(|process\.env(\.\w+|\[[^\]]+\]) = |process\.chdir\(/;
/**
 * Test files run one after the other in the same process and load each module once: what they share is code, never state,
 * and a process of its own for each would cost a third of the whole run. What changes its process loads our modules anew.
 */
const anew = readdirSync(tests, { recursive: true, encoding: "utf8" })
  .filter((file) => /(?<!\.deep)\.test\.tsx?$/.test(file) && !file.startsWith("e2e"))
  .filter((file) => changesItsProcess.test(readFileSync(path.join(tests, file), "utf8")))
  .map((file) => `tests/${file.replaceAll("\\", "/")}`);
const elsewhere = ["tests/e2e/**", "tests/**/*.deep.test.ts", "node_modules/**"];

/**
 * Pure rooms, files on disk, and a real SQLite file per test file where a database is needed. The browser tests have
 * tests/e2e/vitest.config.ts, the slow ones (*.deep.test.ts) tests/setup/deep.config.ts.
 */
export default defineConfig({
  root,
  resolve: { alias },
  test: {
    setupFiles: [here("./setup/leave-as-found.ts")],
    testTimeout: PATIENT_MS,
    hookTimeout: PATIENT_MS,
    pool: "forks",
    maxWorkers: 2,
    // Room for what is thrown away at once: it is cleared less often.
    execArgv: ["--max-semi-space-size=64"],
    // What was compiled is kept by its content: for the next run, and for the other project of this one.
    experimental: { fsModuleCache: true },
    projects: [
      {
        extends: true,
        test: {
          name: "together",
          include: ["tests/**/*.test.{ts,tsx}"],
          exclude: [...elsewhere, ...anew],
          isolate: false,
        },
      },
      {
        extends: true,
        test: { name: "anew", include: anew, isolate: false, setupFiles: [here("./setup/loaded-anew.ts")] },
      },
    ],
  },
});
