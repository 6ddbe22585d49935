import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const root = fileURLToPath(new URL("..", import.meta.url));
const textOf = (file: string): string => readFileSync(path.join(root, file), "utf8");
const developers = textOf("DEVELOPERS.md");
const section = developers.split("## Ten walks\n")[1]?.split("\n## ")[0] ?? "";
const inTicks = (cell: string): string[] => [...cell.matchAll(/`([^`]+)`/g)].map(([, text]) => text!);

const walks = [...section.matchAll(/^\| ([^|]+\?) +\|([^|]+)\|([^|]+)\|$/gm)].map(
  ([, question = "", files = "", stands = ""]) => ({
    question,
    files: ["README.md", "DEVELOPERS.md", ...inTicks(files)],
    stands: inTicks(stands)[0] ?? "",
  }),
);

describe("ten walks from README to the line", () => {
  it("are ten", () => expect(walks).toHaveLength(10));

  it("begin at README, which leads to DEVELOPERS", () =>
    expect(textOf("README.md")).toContain("(DEVELOPERS.md)"));

  it.each(walks)("$question", ({ files, stands }) => {
    expect(files.length).toBeGreaterThan(2);
    expect(files.length).toBeLessThanOrEqual(4);
    expect(files.filter((file) => !existsSync(path.join(root, file)))).toEqual([]);
    expect(stands).not.toBe("");
    expect(textOf(files.at(-1)!)).toContain(stands);
    // The way from the tables to the file: its room or folder has a row.
    for (const file of files.slice(2)) {
      const [first = "", name = ""] = file.split("/");
      expect(["lib", "components"]).toContain(first);
      expect(developers).toMatch(new RegExp(`^\\| ${name} +\\|`, "m"));
    }
  });
});
