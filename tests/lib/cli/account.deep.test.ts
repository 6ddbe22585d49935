import { spawnSync } from "node:child_process";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { listPeople } from "@/lib/roster";
import { useFreshDb } from "../../setup/fresh-db";

const root = path.join(import.meta.dirname, "../../..");
const fresh = useFreshDb();

function account(...words: readonly string[]) {
  const { folder, url } = fresh();
  return spawnSync(
    process.execPath,
    ["--conditions=react-server", "--import", "tsx", "lib/cli/account.ts", ...words],
    {
      cwd: root,
      encoding: "utf8",
      input: "slag-then-bead\n",
      env: { ...process.env, TOELINE_DATA: folder, DATABASE_URL: url },
    },
  );
}
const named = (name: string) => ["--name", name, "--sign-in", name.toLowerCase()];

describe("an account opened from the terminal", () => {
  it("has its leading role and those named besides, and a code where one of them signs", async () => {
    const teacher = account("--role", "instructor", "--also", "welder,inspector", ...named("Imke"));
    expect(teacher.stderr).toBe("");
    expect(teacher.stdout).toContain("Imke signs in as imke (instructor, inspector, welder).");
    expect(teacher.stdout).toContain("One-time code:");
    const owner = account("--role", "owner", "--also", "welder", "--also", "instructor", ...named("Odo"));
    expect(owner.stdout).toContain("Odo signs in as odo (owner, instructor, welder).");
    expect(owner.stdout).not.toContain("One-time code:");
    const people = await listPeople(fresh().db);
    expect(people.map(({ name, role, also }) => [name, role, also])).toEqual([
      ["Imke", "instructor", ["inspector", "welder"]],
      ["Odo", "owner", ["instructor", "welder"]],
    ]);
  });

  it("is not opened with a role that there is none of", async () => {
    const refused = account("--role", "welder", "--also", "foreman", ...named("Joss"));
    expect(refused.status).toBe(2);
    expect(refused.stdout).toContain("Roles: owner, instructor, inspector, welder");
    expect((await listPeople(fresh().db)).map(({ name }) => name)).not.toContain("Joss");
  });
});
