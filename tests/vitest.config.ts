import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { PATIENT_MS } from "./setup/patience";

const root = fileURLToPath(new URL("..", import.meta.url));

/**
 * Rooms that keep nothing between two calls: their test files run one after the other in the same process and load each
 * module once. A process of its own for each would cost a third of the whole run.
 */
const pure = [
  ...["accept", "arc", "assess", "base", "case", "diagnose", "geometry", "inspect", "ledger", "marks"],
  ...[
    "measure",
    "numeric",
    "pdf",
    "people",
    "report",
    "section",
    "setup",
    "signature",
    "strip",
    "trade",
    "trends",
    "units",
  ],
];
const together = [
  `tests/lib/{${pure.join(",")}}/**/*.test.ts`,
  "tests/{cases,demo-images}/**/*.test.ts",
  "tests/components/**/*.test.{ts,tsx}",
];
/** Of those, what replaces modules or the browser's own functions while it runs. */
const alone = ["tests/lib/accept/weld-laws.test.ts", "tests/components/saving/send-photo.test.ts"];
const elsewhere = ["tests/e2e/**", "tests/**/*.deep.test.ts", "node_modules/**"];

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
    testTimeout: PATIENT_MS,
    hookTimeout: PATIENT_MS,
    pool: "forks",
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        test: { name: "pure", include: together, exclude: [...elsewhere, ...alone], isolate: false },
      },
      {
        extends: true,
        test: {
          name: "alone",
          include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
          exclude: [
            ...elsewhere,
            ...together.filter((one) => !one.includes("components")),
            "tests/components/**",
          ],
        },
      },
      { extends: true, test: { name: "mocking", include: alone } },
    ],
  },
});
