import { readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { defects, withChange } from "./defects";

const root = fileURLToPath(new URL("../..", import.meta.url));
const read = (file: string) => readFileSync(path.join(root, file), "utf8");

describe("a defect that is put back on purpose", () => {
  it("is none twice", () => expect(new Set(defects.map(({ id }) => id)).size).toBe(defects.length));

  it.each(defects.map((one) => [one.id, one] as const))(
    "still has its place in the sources and its test: %s",
    (id, { change, test }) => {
      const text = read(change.file);
      expect(withChange(text, id, change)).not.toBe(text);
      // Names are put together from what is described and what it does; each part stands in the file as it is.
      const named = read(test.file).replaceAll('" +\n', "");
      const words = test.name.split(" ");
      expect(words.some((_, i) => named.includes(words.slice(0, i + 1).join(" ")))).toBe(true);
    },
  );

  it("applies nowhere else than where it was, or says so", () => {
    const change = { file: "a.ts", from: "x", to: "y" };
    expect(withChange("x", "one", change)).toBe("y");
    expect(() => withChange("x x", "one", change)).toThrow(/applies 2 times/);
    expect(() => withChange("z", "one", change)).toThrow(/applies 0 times/);
  });
});
