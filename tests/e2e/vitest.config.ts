import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { PATIENT_MS } from "../setup/patience";

const root = fileURLToPath(new URL("../..", import.meta.url));

/**
 * Browser tests: each file has a real server on a data folder of its own. Two workers side by side, because a page mostly
 * waits; each has one real Chromium for all its files.
 */
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
    exclude: ["tests/e2e/**/*.deep.test.ts", "node_modules/**"],
    testTimeout: 3 * PATIENT_MS,
    hookTimeout: 3 * PATIENT_MS,
    // A poll of Vitest gives up after one second by itself, which a busy machine takes for less.
    expect: { poll: { timeout: PATIENT_MS } },
    globalSetup: fileURLToPath(new URL("./support/unpack-browser.ts", import.meta.url)),
    pool: "forks",
    maxWorkers: 2,
    isolate: false,
  },
});
