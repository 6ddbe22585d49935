import { defineConfig } from "vitest/config";
import rooms, { alias, isCheap } from "../vitest.config";
import { deeperRooms } from "./deeper";

/** What is worth its minutes once a day and before a release: properties over many more cases, renders of full size. */
export default defineConfig({
  root: rooms.root!,
  resolve: { alias: alias.filter((one) => !isCheap(one)) },
  test: {
    include: deeperRooms,
    exclude: ["node_modules/**"],
    env: { TOELINE_DEEP: "1" },
    testTimeout: 3_600_000,
    hookTimeout: 3_600_000,
    pool: "forks",
    maxWorkers: 2,
  },
});
