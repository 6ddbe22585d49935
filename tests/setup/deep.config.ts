import { defineConfig, mergeConfig } from "vitest/config";
import rooms from "../vitest.config";

const { test, ...rest } = rooms;

/** What is worth its minutes once a day and before a release: properties over many more cases, renders of full size. */
export default mergeConfig(
  defineConfig({ ...rest, test: { ...test, include: [], exclude: [] } }),
  defineConfig({
    test: { include: ["tests/**/*.deep.test.ts"], exclude: ["node_modules/**"], testTimeout: 3_600_000 },
  }),
);
