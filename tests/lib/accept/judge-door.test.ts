import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { JudgeInputSchema, listCriteria } from "@/lib/accept";
import { answerWords } from "@/lib/cli/door";
import { measureCaseJsonSchema } from "@/lib/measure";
import { inDepth } from "../../setup/in-depth";
import { commandOf } from "../../setup/run-command";
import { buildCase } from "./build-case";

const commands = { judge: await commandOf("judge"), measure: await commandOf("measure") } as const;
const run = (tool: keyof typeof commands, argument: string, input = "") => commands[tool]([argument], input);

describe("the command-line doors", () => {
  it("judge a case from standard input", () => {
    const file = new URL("../../cases/accept/iso-5817.json", import.meta.url);
    const [first] = JSON.parse(readFileSync(file, "utf8")) as { given: Record<string, unknown> }[];
    const given = JudgeInputSchema.parse(buildCase(first!.given, listCriteria()));
    const { code, out } = run("judge", "-", JSON.stringify(given));
    expect(code).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ criteriaId: "iso-5817-d", edition: "2014" });
  });

  const refused = [
    [
      "judge",
      '{"criteriaId":"iso-5817-c","weld":{"kind":"fillet","thicknessMm":"x"}}',
      /^weld\.thicknessMm: /,
    ],
    [
      "measure",
      '{"drawing":{"marks":[{"id":"m","imperfection":"undercut"}]}}',
      /^drawing\.marks\.0\.shape: /,
    ],
  ] as const;
  it.each(refused.slice(0, inDepth(1, 2)))(
    "%s answers %s with path and reason, exit 2, no stack trace",
    (tool, input, words) => {
      const { code, out, err } = run(tool, "-", input);
      expect([code, out]).toEqual([2, ""]);
      expect(err).toMatch(words);
      expect(err).not.toMatch(/\n\s+at /);
    },
  );

  it("list every criteria set with its rows and limits, and publish the schema", () => {
    const listed = JSON.parse(answerWords("judge", "", ["--list"]).out) as {
      id: string;
      rules: { id: string; limits: string[] }[];
    }[];
    expect(listed.map(({ id }) => id)).toEqual(listCriteria().map(({ id }) => id));
    for (const { rules } of listed) expect(rules.length).toBeGreaterThan(2);
    const undercut = listed
      .find(({ id }) => id === "iso-5817-c")!
      .rules.find(({ id }) => id === "iso-c-1.7-undercut")!;
    expect(undercut.limits).toEqual(["0.1 t", "min(25, 0.25 L)", "min(0.1 t, 0.5)"]);
    expect(measureCaseJsonSchema()).toMatchObject({ required: ["drawing"] });
  });
});
