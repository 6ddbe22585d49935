import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { layMigrated } from "../../setup/migrated";
import { openDb } from "@/lib/db";
import { PATIENT_MS } from "../../setup/patience";

const root = fileURLToPath(new URL("../../..", import.meta.url));
let folder = "";
beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), "toeline-cli-"));
  await layMigrated(path.join(folder, "toeline.db"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(args: readonly string[], env: Record<string, string> = {}, input = "") {
  const { status, stdout, stderr } = spawnSync(process.execPath, args, {
    cwd: root,
    env: { ...process.env, NODE_OPTIONS: "", TOELINE_DATA: folder, ...env },
    input,
    encoding: "utf8",
    timeout: PATIENT_MS,
  });
  return { status, stdout, stderr };
}
const tool = (name: string, ...args: string[]) => [
  "--conditions=react-server",
  "--import",
  "tsx",
  `lib/cli/${name}.ts`,
  ...args,
];
const account = (input: string, ...more: string[]) =>
  run(
    tool("account", "--role", "owner", "--name", "Sunniva Holt", "--sign-in", "sunniva", ...more),
    {},
    input,
  );

describe("reached from the network", () => {
  it("it does not listen while no owner has an account, and says how to open one", () => {
    const { status, stderr } = run(["lib/cli/start.mjs"], { TOELINE_HOST: "0.0.0.0" });
    expect(status).toBe(1);
    expect(stderr).toContain("does not listen on 0.0.0.0 while nobody has an account");
    expect(stderr).toContain("npm run -s account");
  });

  it("an account is opened from the terminal, whole or not at all", async () => {
    expect(account("short\n")).toMatchObject({ status: 2, stderr: expect.stringContaining("at least 10") });
    const db = openDb(`file:${path.join(folder, "toeline.db")}`);
    try {
      expect(await db.person.count({ where: { removedAt: null } })).toBe(0);
      expect(account("long enough\n")).toMatchObject({ status: 0 });
      expect(account("long enough\n")).toMatchObject({
        status: 2,
        stderr: expect.stringContaining("already"),
      });
      expect(await db.person.count({ where: { removedAt: null } })).toBe(1);
      expect(await db.user.count()).toBe(1);
      const kept = await db.account.findFirstOrThrow();
      expect(kept.password).not.toContain("long enough");
    } finally {
      await db.$disconnect();
    }
  });
});

describe("npm run -s verify", () => {
  it("ends with 0 when everything fits, 1 when something does not, 2 when nothing can be read", async () => {
    expect(run(tool("verify"))).toMatchObject({
      status: 0,
      stdout: expect.stringContaining("Everything fits."),
    });
    const db = openDb(`file:${path.join(folder, "toeline.db")}`);
    await db.person.updateMany({ where: { removedAt: null }, data: { role: "inspector" } });
    await db.$disconnect();
    const found = run(tool("verify"));
    expect(found.status).toBe(1);
    expect(found.stdout).toMatch(/person:\w+ is not as the log last recorded it/);
    expect(JSON.parse(run(tool("verify", "--json")).stdout)).toMatchObject({
      findings: [{ code: "state-changed" }],
    });
    expect(run(tool("verify"), { TOELINE_DATA: path.join(folder, "nowhere") }).status).toBe(2);
  });
});
