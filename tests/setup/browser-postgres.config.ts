import { defineConfig } from "vitest/config";
import browser from "../e2e/vitest.config";

/** What comes along with the pages themselves is the same whatever they are kept in. */
const withoutDatabase = ["tests/e2e/page-weight.test.ts"];

/** The browser tests once more, each file's server on a database of its own on a real PostgreSQL. */
export default defineConfig({
  ...browser,
  test: {
    ...browser.test,
    exclude: [...(browser.test?.exclude ?? []), ...withoutDatabase],
    globalSetup: ["tests/setup/postgres-global.ts", "tests/e2e/support/unpack-browser.ts"],
  },
});
