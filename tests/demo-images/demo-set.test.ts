import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { renderTruth, scenarioNames } from "@/demo-images";

const folder = fileURLToPath(new URL("../../demo-images/set", import.meta.url));
const pictures = readdirSync(folder).filter((name) => name.endsWith(".jpg"));

describe("the demo set", () => {
  it("has a picture and its truth for every scenario, small enough to ship", () => {
    expect(pictures.map((name) => name.replace(".jpg", "")).sort()).toEqual([...scenarioNames].sort());
    expect(pictures.length).toBeGreaterThanOrEqual(16);
    const bytes = pictures.map((name) => statSync(path.join(folder, name)).size);
    expect(Math.max(...bytes)).toBeLessThan(700_000);
    expect(bytes.reduce((sum, size) => sum + size, 0)).toBeLessThan(10_000_000);
    for (const name of pictures)
      expect(existsSync(path.join(folder, name.replace(".jpg", ".json")))).toBe(true);
  });

  it("carries the truth the generator gives today", () => {
    const truth = renderTruth({ scenario: "tee-toes-slag", seed: 7, megapixels: 2.4 });
    const stored = readFileSync(path.join(folder, "tee-toes-slag.json"), "utf8");
    expect(stored).toBe(`${JSON.stringify(truth)}\n`);
  });
});
