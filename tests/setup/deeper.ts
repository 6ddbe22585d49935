import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

const tests = fileURLToPath(new URL("..", import.meta.url));
const inBrowser = (file: string): boolean => file.startsWith("e2e");

/** Tests that do more in the deep run than in the ordinary one (`in-depth.ts`), and those that run there alone. */
const deeper = readdirSync(tests, { recursive: true, encoding: "utf8" })
  .map((file) => file.replaceAll("\\", "/"))
  .filter(
    (file) =>
      /\.deep\.test\.ts$/.test(file) ||
      (/\.test\.tsx?$/.test(file) &&
        /(setup\/in-depth|support\/windows)"/.test(readFileSync(path.join(tests, file), "utf8"))),
  );

const fromRoot = (file: string): string => `tests/${file}`;

export const deeperRooms = deeper.filter((file) => !inBrowser(file)).map(fromRoot);
export const deeperPages = deeper.filter(inBrowser).map(fromRoot);
