import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const root = fileURLToPath(new URL("..", import.meta.url));
const section =
  readFileSync(path.join(root, "DEVELOPERS.md"), "utf8").split("\n## Controls\n")[1]?.split("\n## ")[0] ?? "";
const controls = [...section.matchAll(/^\| ([\d., to]+?) +\|[^|]+\|([^|]+)\|$/gm)].map(
  ([, line = "", tests = ""]) => [line, [...tests.matchAll(/`([^`]+)`/g)].map(([, file]) => file!)] as const,
);

describe("the table of controls", () => {
  it("has its lines", () => expect(controls.length).toBeGreaterThan(20));

  it.each(controls)("%s names tests that are there", (_, files) => {
    expect(files.length).toBeGreaterThan(0);
    for (const file of files) {
      expect(file).toMatch(/^tests\/.*\.test\.tsx?$/);
      expect(existsSync(path.join(root, file)), file).toBe(true);
    }
  });
});
