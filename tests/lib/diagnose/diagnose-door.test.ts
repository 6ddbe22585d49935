import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { afterAll, describe, expect, it } from "vitest";
import { GET, POST } from "@/app/api/diagnose/route";
import { answerWords } from "@/lib/cli/door";
import { causeIds, diagnose, DiagnoseInputSchema } from "@/lib/diagnose";
import { emptyRunSetup } from "@/lib/setup";
import { imperfectionIds } from "@/lib/trade";
import { inDepth, itDeep } from "../../setup/in-depth";
import { commandOf } from "../../setup/run-command";

const folder = mkdtempSync(path.join(tmpdir(), "toeline-diagnose-door-"));
afterAll(() => rmSync(folder, { recursive: true }));

/** As `npm run -s diagnose -- ARGUMENTS` runs it. */
const command = await commandOf("diagnose");

/** The same in this process, with words of use of its own; what is not asked of the process itself is asked here. */
const answer = (words: readonly string[]) => answerWords("diagnose", "How it is used.", words);

/** Invented. */
const given = {
  setup: { process: "FCAW-S", electrodeClass: "E71T-11", polarity: "DCEP" },
  findings: [{ imperfection: "spatter" }],
};
const expected = () => {
  const result = diagnose(DiagnoseInputSchema.parse(given));
  return JSON.parse(JSON.stringify(result.ok ? result.value : null)) as unknown;
};

describe("npm run -s diagnose", () => {
  it("answers a case from a file and from standard input as the room does", () => {
    const file = fileOf(JSON.stringify(given));
    for (const { code, out, err } of [
      ...inDepth([], [command([file])]),
      command(["-"], JSON.stringify(given)),
      answer([file]),
    ]) {
      expect([code, err]).toEqual([0, ""]);
      expect(JSON.parse(out)).toEqual(expected());
    }
  });

  it("prints everything that is worked out only when asked for: reasons, checks, explanation", () => {
    const said = JSON.parse(answer([fileOf(JSON.stringify(given))]).out) as {
      causes: { id: string; why: unknown[] }[];
      checks: unknown[];
      explanation: unknown[];
      joint: { causes: string[] };
    };
    expect(said.causes[0]!.id).toBe("polarity");
    expect(said.causes[0]!.why.length).toBeGreaterThan(0);
    expect(said.checks.length).toBeGreaterThan(0);
    expect(said.explanation.length).toBeGreaterThan(0);
    expect(said.joint.causes).toEqual(["polarity"]);
  });

  it.each([
    ["a missing file", ["no-such-file.json"], "", /^no-such-file\.json: cannot be read\n$/],
    ["text that is no JSON", ["-"], "{", /^\(top\): not JSON/],
    [
      "an unknown word deep inside",
      ["-"],
      bad({ findings: [{ imperfection: "sadness" }] }),
      /^findings\.0\.imperfection: /,
    ],
    ["a number that cannot be", ["-"], bad({ setup: { volts: -3 } }), /^setup\.volts: /],
    [
      "an unknown question",
      ["-"],
      bad({ answers: { moon: "full" } }),
      /^answers\.moon: There is no question "moon"\.\n$/,
    ],
    [
      "an unknown answer",
      ["-"],
      bad({ answers: { "draft-feel": "maybe" } }),
      /^answers\.draft-feel: "maybe" is not an answer/,
    ],
    ["a flag there is not", ["--lists"], "", /^--lists: no such flag\n/],
  ] as const)(
    "refuses %s by path and reason, exit 2, nothing on standard output",
    (_, words, input, line) => {
      const { code, out, err } = answer(words[0] === "-" ? [fileOf(input)] : words);
      expect([code, out]).toEqual([2, ""]);
      expect(err).toMatch(line);
      expect(err).not.toMatch(/\n\s+at /);
    },
  );

  // In the ordinary run the doors of judge and measure show it: the three are one shell.
  itDeep("a process that refuses says and ends with just that", () => {
    const input = bad({ setup: { volts: -3 } });
    expect(command(["-"], input)).toEqual(answer([fileOf(input)]));
  });

  itDeep("explains itself", () => {
    const asked = command(["--help"]);
    expect(asked.code).toBe(0);
    for (const word of ["case.json", "--list", "--schema", "standard input"])
      expect(asked.out).toContain(word);
    expect(answer(["--help"])).toEqual({ code: 0, out: "How it is used.\n", err: "" });
    expect(answer([])).toEqual({ code: 2, out: "", err: "How it is used.\n" });
  });

  it("lists its words, and publishes a schema that an independent validator takes", () => {
    const list = JSON.parse(answer(["--list"]).out) as Record<string, { id: string }[]>;
    expect(list.imperfections!.map(({ id }) => id)).toEqual([...imperfectionIds]);
    expect(list.causes!.map(({ id }) => id).toSorted()).toEqual([...causeIds].toSorted());
    expect(Object.keys(list.readings!).toSorted()).toEqual(Object.keys(emptyRunSetup).toSorted());
    expect(list.questions!.map(({ id }) => id)).toContain("polarity-lugs");
    const validate = new Ajv2020({ strict: false }).compile(JSON.parse(answer(["--schema"]).out) as object);
    expect(validate(given)).toBe(true);
    expect(validate(JSON.parse(bad({ findings: [{ imperfection: "sadness" }] })))).toBe(false);
  });
});

function fileOf(text: string): string {
  const file = path.join(folder, "case.json");
  writeFileSync(file, text);
  return file;
}

function bad(change: object): string {
  return JSON.stringify({ ...given, ...change });
}

describe("/api/diagnose", () => {
  const here = "http://localhost/api/diagnose";
  const headers = { host: "localhost" };
  const post = (body: string) => POST(new Request(here, { method: "POST", body, headers }));

  it("gives the same answer as the command line, and its schema", async () => {
    const answer = await post(JSON.stringify(given));
    expect(answer.status).toBe(200);
    expect(await answer.json()).toEqual(expected());
    const schema = (await (await GET(new Request(here, { headers }))).json()) as object;
    expect(new Ajv2020({ strict: false }).compile(schema)(given)).toBe(true);
  });

  it.each([
    ["{", 400, "(top): not JSON"],
    [bad({ findings: [{ imperfection: "sadness" }] }), 422, "findings.0.imperfection: "],
    [bad({ answers: { moon: "full" } }), 422, 'answers.moon: There is no question "moon".'],
  ])("refuses %s with %d and the path", async (body, status, start) => {
    const answer = await post(body);
    expect(answer.status).toBe(status);
    const { errors } = (await answer.json()) as { errors: string[] };
    expect(errors[0]!.startsWith(start)).toBe(true);
  });
});
