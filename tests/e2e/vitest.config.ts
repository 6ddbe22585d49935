import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { PATIENT_MS } from "../setup/patience";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** Browser tests: one real server on a data folder of its own, one real Chromium, one file after the other. */
export default defineConfig({
  root,
  resolve: {
    alias: {
      "@": root.replace(/\/$/, ""),
      "server-only": fileURLToPath(new URL("../setup/server-only.ts", import.meta.url)),
    },
  },
  test: {
    include: ["tests/e2e/**/*.test.ts"],
    testTimeout: 3 * PATIENT_MS,
    hookTimeout: 3 * PATIENT_MS,
    fileParallelism: false,
    pool: "forks",
    maxWorkers: 1,
  },
});
