import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { JudgeInputSchema } from "@/lib/accept";
import { POST as diagnose } from "@/app/api/diagnose/route";
import { POST as judge } from "@/app/api/judge/route";
import { POST as measure } from "@/app/api/measure/route";
import { POST as plan } from "@/app/api/plan/route";
import { MOST_CASE_BYTES } from "@/lib/case";
import { doorNames } from "@/lib/case/doors";
import { answerFile } from "@/lib/cli/door";
import { doorCases, type DoorCase } from "./door-cases";

const routes = { diagnose, judge, measure, plan };
const folder = mkdtempSync(path.join(tmpdir(), "toeline-parity-"));
afterAll(() => rmSync(folder, { recursive: true }));

interface Said {
  readonly value?: unknown;
  readonly lines?: readonly string[];
}

function onTheCommandLine({ door, bytes }: DoorCase): Said {
  const file = path.join(folder, "case.json");
  writeFileSync(file, bytes);
  const answer = answerFile(door, file);
  return answer.ok ? { value: JSON.parse(JSON.stringify(answer.value)) as unknown } : { lines: answer.lines };
}

async function overHttp({ door, bytes }: DoorCase): Promise<Said & { readonly status: number }> {
  const headers = { host: "localhost" };
  const answer = await routes[door](
    new Request(`http://localhost/api/${door}`, { method: "POST", body: bytes, headers }),
  );
  const body = (await answer.json()) as { errors?: string[] };
  const said = answer.status === 200 ? { value: body } : { lines: body.errors ?? [] };
  return { status: answer.status, ...said };
}

describe("the command line and HTTP", () => {
  it("have cases enough, and each of its own name", () => {
    expect(doorCases.length).toBeGreaterThan(100);
    for (const door of doorNames) {
      const mine = doorCases.filter((one) => one.door === door);
      expect(mine.filter(({ status }) => status !== 200).length, door).toBeGreaterThan(30);
      expect(
        mine.some(({ status }) => status === 200),
        door,
      ).toBe(true);
      expect(new Set(mine.map(({ name }) => name)).size).toBe(mine.length);
    }
  });

  it.each(doorCases)("say the same of $door: $name", async (one) => {
    const there = onTheCommandLine(one);
    const { status, ...here } = await overHttp(one);
    expect(here).toEqual(there);
    expect(status).toBe(one.status);
    if (one.status === 200) return expect(there.lines).toBeUndefined();
    if (one.pattern === undefined) expect(there.lines).toEqual(one.lines);
    else expect(there.lines).toEqual([expect.stringMatching(one.pattern)]);
    for (const line of there.lines ?? []) expect(line).not.toMatch(/\n|--\w/);
  });

  it("refuse what is larger than any case in the same words", async () => {
    const [one] = doorCases;
    const large = { ...one!, bytes: Buffer.alloc(MOST_CASE_BYTES + 1, " ") };
    const lines = ["(top): larger than 4 MB; no case is"];
    expect(onTheCommandLine(large)).toEqual({ lines });
    expect(await overHttp(large)).toEqual({ status: 413, lines });
  });

  it("hold cases that a schema alone lets through: without the names they would be judged", () => {
    const alone = doorCases.filter(
      (one) => one.door === "judge" && one.status === 422 && JudgeInputSchema.safeParse(one.case).success,
    );
    expect(alone.map(({ name }) => name)).toEqual(
      expect.arrayContaining(["capitals", "a name without its unit", "unknown names at three depths"]),
    );
  });
});
