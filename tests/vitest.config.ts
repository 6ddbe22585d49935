import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const root = fileURLToPath(new URL("..", import.meta.url));

/**
 * Two projects: "unit" (pure rooms and files on disk, no server) and "db" (a real SQLite file per test file).
 * The browser tests have a runner of their own: tests/e2e/run.ts.
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
    exclude: ["tests/e2e/**", "node_modules/**"],
    testTimeout: 30_000,
    pool: "forks",
    maxWorkers: 2,
  },
});
