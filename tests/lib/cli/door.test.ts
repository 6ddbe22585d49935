import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { JudgeInputSchema } from "@/lib/accept";
import { readCase } from "@/lib/cli/door";
import { DiagnoseInputSchema } from "@/lib/diagnose";
import { MeasureCaseSchema } from "@/lib/measure";
import { emptyDrawing } from "@/lib/marks";

const folder = mkdtempSync(path.join(tmpdir(), "toeline-door-"));
afterAll(() => rmSync(folder, { recursive: true }));
const file = path.join(folder, "case.json");

const schemas = { judge: JudgeInputSchema, measure: MeasureCaseSchema, diagnose: DiagnoseInputSchema };
type Door = keyof typeof schemas;
function lines(door: Door, content: string | Buffer | object): readonly string[] {
  const raw = typeof content === "string" || Buffer.isBuffer(content);
  writeFileSync(file, raw ? content : JSON.stringify(content));
  const read = readCase(file, schemas[door]);
  return read.ok ? [] : read.lines;
}
const weld = { kind: "butt", thicknessMm: 10 };
const undercut = (more: object) => ({
  criteriaId: "iso-5817-c",
  weld,
  observations: [{ id: "u", imperfection: "undercut", ...more }],
});
const spot = { id: "m", imperfection: "undercut", place: null, shape: { kind: "point", at: [1, 1] } };

/** Malformed cases, invented. Each must be refused by name and in words. */
describe("a door for machines", () => {
  it.each(["judge", "measure", "diagnose"] as const)("refuses what is no case at all: %s", (door) => {
    const wholes: [string | Buffer, RegExp][] = [
      ["", /not JSON \(it is empty\)/],
      ["{", /not JSON/],
      ['{"volts": NaN}', /not JSON/],
      [Buffer.from("\uFEFF{}", "utf16le"), /UTF-8/],
      [Buffer.from("{}", "utf16le"), /UTF-8/],
      ["[]", /^\(top\): .*expected object/],
      ["null", /^\(top\): /],
      ["7", /^\(top\): /],
    ];
    for (const [content, words] of wholes) {
      const said = lines(door, content);
      expect(said).toHaveLength(1);
      expect(said[0]).toMatch(words);
    }
    expect(readCase(path.join(folder, "none.json"), schemas[door])).toMatchObject({ ok: false });
    expect(readCase(folder, schemas[door])).toMatchObject({ ok: false });
  });

  it.each([
    ["judge", undercut({ depthMm: "0.4" }), /^observations\.0\.depthMm: .*expected number/],
    ["judge", undercut({ depthMm: { value: 0.4 } }), /^observations\.0\.depthMm\.unit: /],
    ["judge", undercut({ depth: 0.4 }), /^observations\.0\.depth: .*Is "depthMm" meant\?$/],
    ["judge", undercut({ alongMm: [1] }), /^observations\.0\.alongMm/],
    ["judge", undercut({ imperfection: "cold lap" }), /^observations\.0\.imperfection: /],
    ["judge", { ...undercut({}), weld: { ...weld, thicknessMm: -3 } }, /^weld\.thicknessMm: /],
    ["judge", { ...undercut({}), weld: { ...weld, thickness: 3 } }, /^weld\.thickness: .*"thicknessMm"/],
    ["judge", { ...undercut({}), lookedFor: "everything" }, /^lookedFor/],
    [
      "judge",
      { ...undercut({}), observations: Array(2001).fill({ id: "u", imperfection: "undercut" }) },
      /^obs/,
    ],
    ["diagnose", { setup: { volts: -3 } }, /^setup\.volts: /],
    ["diagnose", { setup: { volt: 16 } }, /^setup\.volt: .*Is "volts" meant\?$/],
    ["diagnose", { findings: [{ imperfection: "undercut", where: "toe" }] }, /^findings\.0\.where: /],
    ["diagnose", { findings: Array(501).fill({ imperfection: "undercut" }) }, /^findings: /],
    ["measure", {}, /^drawing: /],
    ["measure", { drawing: { ...emptyDrawing, marks: [{ ...spot, colour: "red" }] } }, /^drawing\.marks/],
    ["measure", { drawing: emptyDrawing, options: { pickSigma: 2 } }, /^options\.pickSigma: .*"pickSigmaPx"/],
  ] as const)("names the field: %s %#", (door, content, words) => {
    const said = lines(door, content);
    expect(said[0]).toMatch(words);
    for (const line of said) expect(line).not.toMatch(/\n\s+at |Invalid input$/);
  });

  it("reads a case with a byte order mark, and one with every name in its place", () => {
    expect(lines("judge", `\uFEFF${JSON.stringify(undercut({ depthMm: 0.4 }))}`)).toEqual([]);
    expect(lines("measure", { drawing: emptyDrawing, options: { pickSigmaPx: 2 } })).toEqual([]);
    expect(lines("diagnose", { setup: { volts: 16 }, answers: { "draft-feel": "yes" } })).toEqual([]);
  });
});
