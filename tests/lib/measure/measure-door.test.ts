import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { afterAll, describe, expect, it } from "vitest";
import { answerWords } from "@/lib/cli/door";
import { defaultMeasureOptions, measureCase, MeasureCaseSchema } from "@/lib/measure";
import { budgetParts } from "@/lib/measure/types";
import { inDepth, itDeep } from "../../setup/in-depth";
import { commandOf } from "../../setup/run-command";

const folder = mkdtempSync(path.join(tmpdir(), "toeline-measure-door-"));
afterAll(() => rmSync(folder, { recursive: true }));

/** As `npm run -s measure -- ARGUMENTS` runs it. */
const measure = await commandOf("measure");

/** The same in this process, with words of use of its own; what is not asked of the process itself is asked here. */
const answer = (words: readonly string[]) => answerWords("measure", "How it is used.", words);

/** 20 photo px per mm; invented. */
const given = {
  drawing: {
    schemaVersion: 1,
    scale: { kind: "two-points", a: { x: 0, y: 900 }, b: { x: 2000, y: 900 }, lengthMm: 100 },
    weldLine: [
      { x: 100, y: 500 },
      { x: 2100, y: 500 },
    ],
    marks: [
      {
        id: "m1",
        imperfection: "undercut",
        shape: {
          kind: "line",
          points: [
            { x: 300, y: 400, grainPx: 0.5 },
            { x: 700, y: 400, grainPx: 0.5 },
          ],
        },
        place: "upper-toe",
        stretch: null,
        patterns: [],
        gauge: [],
        note: "",
      },
    ],
  },
};

describe("npm run -s measure", () => {
  it("measures a case from a file, with the parts of each uncertainty, as the room does", () => {
    const { code, out, err } = inDepth(answer, measure)([fileOf(JSON.stringify(given))]);
    expect([code, err]).toEqual([0, ""]);
    const report = JSON.parse(out) as { marks: { lengthMm: { value: number; budget: unknown[] } }[] };
    expect(report.marks[0]!.lengthMm.value).toBeCloseTo(20, 9);
    expect(report.marks[0]!.lengthMm.budget.length).toBeGreaterThan(3);
    expect(report).toEqual(JSON.parse(JSON.stringify(measureCase(MeasureCaseSchema.parse(given)))));
  });

  it("measures a case from standard input, and says on the side why there is no scale", () => {
    const { code, out, err } = measure(["-"], JSON.stringify({ drawing: { ...given.drawing, scale: null } }));
    expect(code).toBe(0);
    expect(err).toMatch(/^No scale yet: .*\.\n$/);
    expect(JSON.parse(out)).toMatchObject({ mmPerPx: null, marks: [{ id: "m1", lengthMm: null }] });
  });

  it.each([
    ["a missing file", ["no-such-file.json"], "", /^no-such-file\.json: cannot be read\n$/],
    ["text that is no JSON", ["-"], "{", /^\(top\): not JSON/],
    ["a wrong value deep inside, by its path", ["-"], changed(), /^drawing\.marks\.0\.shape\.points\.1\.x: /],
    ["a flag there is not", ["--lengths"], "", /^--lengths: no such flag\n/],
  ] as const)("answers %s in one line, exit 2, nothing on standard output", (_, words, input, line) => {
    const { code, out, err } = answer(words[0] === "-" ? [fileOf(input)] : words);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toMatch(line);
    expect(err).not.toMatch(/\n\s+at /);
  });

  it("a process that refuses says and ends with just that", () =>
    expect(measure(["-"], changed())).toEqual(answer([fileOf(changed())])));

  itDeep("explains itself", () => {
    const asked = measure(["--help"]);
    expect(asked.code).toBe(0);
    for (const flag of ["case.json", "--list", "--schema", "standard input"])
      expect(asked.out).toContain(flag);
    expect(answer(["--help"])).toEqual({ code: 0, out: "How it is used.\n", err: "" });
    expect(answer([])).toEqual({ code: 2, out: "", err: "How it is used.\n" });
  });

  it("lists what a case may say, and publishes a schema that an independent validator takes", () => {
    expect(JSON.parse(answer(["--list"]).out)).toMatchObject({
      scaleKinds: ["two-points", "rectangle", "edges", "disc", "strip"],
      shapeKinds: ["point", "line", "outline"],
      budgetParts: budgetParts.map((part) => ({ part })),
      defaultOptions: { ...defaultMeasureOptions },
    });
    const schema = JSON.parse(answer(["--schema"]).out) as object;
    const validate = new Ajv2020({ strict: false }).compile(schema);
    expect(validate(given)).toBe(true);
    expect(validate(JSON.parse(changed()))).toBe(false);
  });

  it("gives the angle at an apex and the leg of a fillet seen from above", () => {
    const at = (x: number, y: number) => ({ x, y, grainPx: 0.5 });
    const toe = (y: number) => [at(200, y), at(900, y), at(1600, y)];
    const report = measureCase(
      MeasureCaseSchema.parse({
        ...given,
        toes: [toe(400), toe(600)],
        filletSeen: "along-bisector",
        // A right-angled triangle with equal legs has 45 degrees at its foot: plain geometry.
        angles: [{ a: at(800, 300), apex: at(400, 300), b: at(800, 700) }],
      }),
    );
    expect(report.angles[0]?.value).toBeCloseTo(45, 6);
    expect(report.angles[0]?.unit).toBe("deg");
    // 200 px are 10 mm from toe to toe; the leg of an equal fillet is that over the root of two.
    expect(report.leg?.leg.value).toBeCloseTo(10 / Math.SQRT2, 6);
    expect(report.leg?.issues.map(({ code }) => code)).toEqual(["foreshortened"]);
    const unscaled = measureCase(
      MeasureCaseSchema.parse({ drawing: {}, angles: [{ a: at(1, 0), apex: at(0, 0), b: at(0, 1) }] }),
    );
    expect([unscaled.angles, unscaled.leg]).toEqual([[null], null]);
  });
});

function fileOf(text: string): string {
  const file = path.join(folder, "case.json");
  writeFileSync(file, text);
  return file;
}

function changed(): string {
  return JSON.stringify(given).replace('{"x":700', '{"x":"far"');
}
