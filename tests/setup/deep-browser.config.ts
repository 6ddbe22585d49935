import { defineConfig } from "vitest/config";
import browser from "../e2e/vitest.config";
import { deeperPages } from "./deeper";

/** The pages that the ordinary run looks at on one screen only, on all of theirs. */
export default defineConfig({
  ...browser,
  test: { ...browser.test, include: deeperPages, exclude: ["node_modules/**"], env: { TOELINE_DEEP: "1" } },
});
