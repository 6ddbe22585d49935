import { execFile } from "node:child_process";
import { existsSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { scenarioNames } from "@/demo-images";
import { parseArguments } from "@/demo-images/arguments";

const root = fileURLToPath(new URL("../..", import.meta.url));

describe("what cannot be rendered is refused in one sentence", () => {
  it.each([
    ["unknown scenario", ["bridge-of-sighs", "--out", "a.jpg"]],
    ["unknown option", ["stringer-ropey", "--colour", "red", "--out", "a.jpg"]],
    ["an option of the other pictures", ["section-butt", "--bench", "wood", "--out", "a.jpg"]],
    ["a section at a slant no coupon is taken from", ["section-lap", "--tilt-deg", "70", "--out", "a.jpg"]],
    ["no value", ["stringer-ropey", "--seed"]],
    ["not a number", ["stringer-ropey", "--seed", "seven", "--out", "a.jpg"]],
    ["twice", ["stringer-ropey", "--seed", "7", "--seed", "8", "--out", "a.jpg"]],
    ["out of range", ["stringer-ropey", "--megapixels", "480", "--out", "a.jpg"]],
    ["no file", ["stringer-ropey"]],
    ["wrong file type", ["stringer-ropey", "--out", "a.png"]],
    [
      "size of a card",
      ["stringer-ropey", "--scale-object", "card", "--scale-object-mm", "90", "--out", "a.jpg"],
    ],
    [
      "motion in an exact draft",
      ["stringer-ropey", "--quality", "exact-draft", "--motion-px", "4", "--out", "a.jpg"],
    ],
    [
      "field wider than a lens sees",
      ["stringer-ropey", "--distance-mm", "100", "--field-width-mm", "500", "--out", "a.jpg"],
    ],
  ])("%s", (_name, words) => {
    const parsed = parseArguments(words);
    expect(parsed.ok).toBe(false);
    if (parsed.ok) return;
    expect(parsed.sentence).toMatch(/^[^\n]{10,200}\.$/);
    // Our own words, not the schema library's.
    expect(parsed.sentence).not.toMatch(/Invalid|expected|Too (big|small)/);
  });

  it.each([
    ["--seed 1.5", "--seed must be a whole number from 0 to 2147483647."],
    ["--bench sand", "--bench must be one of wood, concrete, paper, steel-table, rubber-mat."],
    ["--orientation 2", "--orientation must be 1, 3, 6 or 8."],
    ["--scale-object none --scale-object-mm 25", "--scale-object-mm needs a scale object in the picture."],
    ["--noise=5", "Write the value after a space: --noise 5."],
    ["--out b.jpg", "--out is given twice."],
  ])("%s: says what to write instead", (words, sentence) => {
    const parsed = parseArguments(["stringer-ropey", "--out", "a.jpg", ...words.split(" ")]);
    expect(parsed).toEqual({ ok: false, sentence });
  });

  it("weighs what is asked against what the scenario has when nothing is asked", () => {
    const refusal = (scenario: string, words: string): string => {
      const parsed = parseArguments([scenario, "--out", "a.jpg", ...words.split(" ")]);
      return parsed.ok ? "" : parsed.sentence;
    };
    expect(refusal("tee-hollow-undersized", "--scale-object-mm 50")).toContain("one size only");
    expect(refusal("crater-crack", "--scale-object-mm 60")).toContain("would lie on the weld");
    expect(refusal("crater-crack", "--scale-object-mm 18")).toBe("");
    expect(refusal("stringer-ropey", "--distance-mm 80 --field-width-mm 170")).toContain(
      "twice its distance",
    );
    expect(refusal("stringer-ropey", "--quality exact-draft --noise 5")).toContain("--noise cannot be given");
  });

  it("every scenario can be rendered as it stands, and with any scale object in its usual size", () => {
    for (const scenario of scenarioNames)
      for (const more of [[], ...["rule", "card", "disc", "strip"].map((kind) => ["--scale-object", kind])])
        expect(parseArguments([scenario, "--out", "a.jpg", ...more]).ok).toBe(true);
  });

  it("exits with 2, without a stack trace and without a file", async () => {
    const out = path.join(mkdtempSync(path.join(tmpdir(), "render-")), "a.jpg");
    const words = [
      "--import",
      "tsx",
      "demo-images/render.ts",
      "stringer-ropey",
      "--tilt-deg",
      "89",
      "--out",
      out,
    ];
    const result = await new Promise<{ code: number | string | null | undefined; stderr: string }>(
      (resolve) => {
        execFile(process.execPath, words, { cwd: root }, (error, _stdout, stderr) =>
          resolve({ code: error?.code, stderr }),
        );
      },
    );
    expect(result.code).toBe(2);
    expect(result.stderr.trim().split("\n")).toHaveLength(1);
    expect(existsSync(out)).toBe(false);
  });
});
