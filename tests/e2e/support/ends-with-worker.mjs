import { rmSync } from "node:fs";

/** A server of tests that nobody stops ends when the process ends that started it, and leaves no data folder. */
process.once("disconnect", () => {
  rmSync(process.env.TOELINE_DATA, { recursive: true, force: true });
  process.exit();
});
