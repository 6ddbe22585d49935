import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { doorNames } from "@/lib/case/doors";
import { answerFile } from "@/lib/cli/door";

const folder = mkdtempSync(path.join(tmpdir(), "toeline-door-"));
afterAll(() => rmSync(folder, { recursive: true }));

/** What a case may get wrong stands in tests/cases/doors; here, the file. */
describe("a command-line door", () => {
  it.each(doorNames)("%s names a file that cannot be read", (door) => {
    for (const file of [path.join(folder, "none.json"), folder])
      expect(answerFile(door, file)).toEqual({ ok: false, lines: [`${file}: cannot be read`] });
  });

  it("reads a case that begins with a byte order mark", () => {
    const file = path.join(folder, "case.json");
    writeFileSync(file, `\uFEFF${JSON.stringify({ setup: { volts: 16 } })}`);
    expect(answerFile("diagnose", file)).toMatchObject({ ok: true });
  });
});
