import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { PATIENT_MS } from "./setup/patience";

const root = fileURLToPath(new URL("..", import.meta.url));

/**
 * Pure rooms, files on disk, and a real SQLite file per test file where a database is needed. The browser tests have
 * tests/e2e/vitest.config.ts, the slow ones (*.deep.test.ts) tests/setup/deep.config.ts.
 */
export default defineConfig({
  root,
  resolve: {
    alias: {
      "@": root.replace(/\/$/, ""),
      // Vitest knows nothing of React's server condition; the marker itself has no content to test.
      "server-only": fileURLToPath(new URL("./setup/server-only.ts", import.meta.url)),
    },
  },
  test: {
    include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
    exclude: ["tests/e2e/**", "tests/**/*.deep.test.ts", "node_modules/**"],
    testTimeout: PATIENT_MS,
    hookTimeout: PATIENT_MS,
    pool: "forks",
    maxWorkers: 2,
  },
});
