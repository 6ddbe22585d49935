import { spawn, spawnSync } from "node:child_process";
import { once } from "node:events";
import { chmodSync, mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { lockForStart, SERVING, takeLock } from "@/lib/cli/data-lock.mjs";

const root = fileURLToPath(new URL("../../..", import.meta.url));
const module = (name: string) => pathToFileURL(path.join(root, "lib/cli", name)).href;
let folder = "";
beforeAll(() => (folder = mkdtempSync(path.join(tmpdir(), "toeline-folder-"))));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Another process that takes a lock, says so, and holds it until it is ended. */
async function holder(name: string) {
  const script = `import { takeLock } from "${module("data-lock.mjs")}";
    const got = await takeLock(process.argv[1], process.argv[2]);
    console.log(got === null ? "refused" : "held");
    setInterval(() => got, 1000);`;
  const child = spawn(process.execPath, ["--input-type=module", "-e", script, folder, name], { cwd: root });
  const [said] = (await once(child.stdout, "data")) as [Buffer];
  return { child, said: String(said).trim() };
}

describe("a data folder", () => {
  it("is set up and served by one process at a time, and is free again however that one ends", async () => {
    const other = await holder(SERVING);
    expect(other.said).toBe("held");
    expect(await lockForStart(folder)).toBeNull();
    expect(await takeLock(folder, SERVING)).toBeNull();
    other.child.kill("SIGKILL");
    await once(other.child, "exit");
    const mine = await lockForStart(folder);
    expect(mine).not.toBeNull();
    expect(await lockForStart(folder)).toBeNull();
    // Whoever sets up leaves the serving to the server.
    expect(await holder(SERVING).then(({ child, said }) => (child.kill("SIGKILL"), said))).toBe("held");
    mine?.();
  });

  it("in use is refused by npm start in one clear sentence", async () => {
    const other = await holder(SERVING);
    const { status, stderr } = spawnSync(process.execPath, ["lib/cli/start.mjs"], {
      cwd: root,
      env: { ...process.env, NODE_OPTIONS: "", TOELINE_DATA: folder },
      encoding: "utf8",
    });
    other.child.kill("SIGKILL");
    expect(status).toBe(1);
    expect(stderr).toMatch(/is already in use by another Toeline on this machine/);
    expect(stderr).not.toMatch(/\n\s+at /);
  });

  it("is closed to others, with what an earlier version left open and what is made from now on", async () => {
    const open = path.join(folder, "open");
    mkdirSync(path.join(open, "photos/originals"), { recursive: true });
    for (const name of ["toeline.db", "toeline.db-wal", "session-key"])
      writeFileSync(path.join(open, name), "x", { mode: 0o644 });
    for (const one of [open, path.join(open, "photos"), path.join(open, "photos/originals")])
      chmodSync(one, 0o755);
    const script = `import { closeToOthers } from "${module("close-to-others.mjs")}";
      import { mkdirSync, writeFileSync } from "node:fs";
      closeToOthers(process.argv[1]);
      writeFileSync(process.argv[1] + "/photos/later", "x"); mkdirSync(process.argv[1] + "/photos/views");`;
    spawnSync(process.execPath, ["--input-type=module", "-e", script, open], { cwd: root });
    const modes = readdirSync(open, { recursive: true, encoding: "utf8" }).map((name) => {
      const stat = statSync(path.join(open, name));
      return [name, (stat.mode & 0o777).toString(8), stat.isDirectory() ? "700" : "600"];
    });
    expect(modes.length).toBe(7);
    for (const [name, is, ought] of modes) expect(is, name).toBe(ought);
    expect((statSync(open).mode & 0o777).toString(8)).toBe("700");
  });
});
