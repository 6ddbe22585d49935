import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { judge, JudgeInputSchema, listCriteria } from "@/lib/accept";
import { buildCase, millimetres } from "./build-case";

interface Expected {
  verdict?: string;
  rows?: { rule: string; result?: string; reason?: string; limit?: string; value?: string }[];
}
interface WrittenCase {
  name: string;
  given: Record<string, unknown>;
  expected: Expected;
  source: string;
  status: "published" | "derived" | "contested" | "memory";
}

const folder = new URL("../../cases/accept/", import.meta.url);
const files = readdirSync(folder).filter((name) => name.endsWith(".json"));

describe.each(files)("%s", (file) => {
  const cases = JSON.parse(readFileSync(new URL(file, folder), "utf8")) as WrittenCase[];

  it.each(cases.map((one) => [one.name, one] as const))("%s", (_, { given, expected, source }) => {
    expect(source.length).toBeGreaterThan(10);
    const result = judge(JudgeInputSchema.parse(buildCase(given, listCriteria())));
    if (!result.ok) throw new Error(JSON.stringify(result.issues));
    const { rows, verdict } = result.value;
    const open = rows.filter((row) => row.result === "open").map((row) => `${row.ruleId}: ${row.reason}`);
    if (expected.verdict !== undefined)
      expect({ verdict, open }).toEqual({
        verdict: expected.verdict,
        open: expected.verdict === "accept" ? [] : open,
      });
    expect(expected.verdict ?? expected.rows).toBeDefined();
    for (const want of expected.rows ?? []) {
      const row = rows.find(({ ruleId }) => ruleId === want.rule);
      if (row === undefined)
        throw new Error(`no row ${want.rule} among ${rows.map((r) => r.ruleId).join(", ")}`);
      if (want.result !== undefined) expect(row).toMatchObject({ result: want.result });
      if (want.reason !== undefined) expect(row.reason).toBe(want.reason);
      // The figures are short decimals and fractions: 1e-9 mm is rounding, nothing else.
      if (want.limit !== undefined) expect(row.limit?.value).toBeCloseTo(millimetres(want.limit), 9);
      if (want.value !== undefined) expect(row.value).toBeCloseTo(millimetres(want.value), 9);
    }
  });
});
