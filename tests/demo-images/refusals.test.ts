import { execFile } from "node:child_process";
import { existsSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { parseArguments } from "@/demo-images/arguments";

const root = fileURLToPath(new URL("../..", import.meta.url));

describe("what cannot be rendered is refused in one sentence", () => {
  it.each([
    ["unknown scenario", ["bridge-of-sighs", "--out", "a.jpg"]],
    ["unknown option", ["stringer-ropey", "--colour", "red", "--out", "a.jpg"]],
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
