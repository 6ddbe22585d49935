import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { clearCutOff, countOriginals, FILLED, FilledSchema, fillWhole } from "@/lib/demo";
import { openDb } from "@/lib/db";
import { createBead } from "@/lib/beads";
import { readSetting, type Pen } from "@/lib/store";
import { layMigrated } from "../../setup/migrated";
import { itDeep } from "../../setup/in-depth";

const root = fileURLToPath(new URL("../../..", import.meta.url));
let folder = "";
beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), "toeline-fill-"));
  await layMigrated(path.join(folder, "toeline.db"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** Two beads and two photos, in place of the whole shop. */
async function fill(pen: Pen, dataDir: string): Promise<void> {
  for (const name of ["one", "two"]) {
    await createBead(pen, { title: name });
    mkdirSync(path.join(dataDir, "photos/originals"), { recursive: true });
    writeFileSync(path.join(dataDir, "photos/originals", name), name);
  }
}

async function found() {
  const db = openDb(`file:${path.join(folder, "toeline.db")}`);
  try {
    return {
      beads: await db.bead.count(),
      filled: await readSetting(db, FILLED, FilledSchema),
      photos: await countOriginals(folder),
      aside: existsSync(path.join(folder, "filling")),
    };
  } finally {
    await db.$disconnect();
  }
}

describe("the demo shop", () => {
  it("is there whole, and nothing of how it came is left", async () => {
    await fillWhole(folder, fill);
    expect(await found()).toEqual({ beads: 2, filled: true, photos: 2, aside: false });
  });

  it("that is cut off half way is not there at all, and comes whole the next time", async () => {
    const half = async (pen: Pen, dataDir: string) => {
      await fill(pen, dataDir);
      throw new Error("cut off");
    };
    await expect(fillWhole(folder, half)).rejects.toThrow("cut off");
    expect(await found()).toEqual({ beads: 0, filled: null, photos: 0, aside: true });
    await clearCutOff(folder, true);
    await fillWhole(folder, fill);
    expect(await found()).toEqual({ beads: 2, filled: true, photos: 2, aside: false });
  });

  it("that is cut off after its photos came and before its database is cleared away with them", async () => {
    mkdirSync(path.join(folder, "filling"));
    writeFileSync(path.join(folder, "filling/toeline.db"), "");
    mkdirSync(path.join(folder, "photos/originals"), { recursive: true });
    writeFileSync(path.join(folder, "photos/originals/one"), "one");
    await clearCutOff(folder, true);
    expect(await found()).toEqual({ beads: 0, filled: null, photos: 0, aside: false });
  });

  it("leaves photos alone that lie beside an emptied database, whatever a filling of long ago left", async () => {
    mkdirSync(path.join(folder, "filling"));
    mkdirSync(path.join(folder, "photos/originals"), { recursive: true });
    writeFileSync(path.join(folder, "photos/originals/evidence"), "e");
    await clearCutOff(folder, true);
    expect((await found()).photos).toBe(1);
  });

  it("takes no photo away once the database is in its place", async () => {
    await fillWhole(folder, fill);
    mkdirSync(path.join(folder, "filling"));
    await clearCutOff(folder, false);
    expect(await found()).toEqual({ beads: 2, filled: true, photos: 2, aside: false });
  });

  itDeep("is not filled in beside a full photo folder: that is said, and nothing is touched", async () => {
    mkdirSync(path.join(folder, "photos/originals"), { recursive: true });
    for (const name of ["a", "b", "c"]) writeFileSync(path.join(folder, "photos/originals", name), name);
    const args = ["--conditions=react-server", "--import", "tsx", "lib/cli/demo.ts"];
    const env = { ...process.env, NODE_OPTIONS: "", TOELINE_DATA: folder };
    const { status, stderr } = spawnSync(process.execPath, args, { cwd: root, env, encoding: "utf8" });
    expect([status, stderr]).toEqual([3, expect.stringMatching(/is empty, and 3 photos lie beside it/)]);
    expect(readdirSync(path.join(folder, "photos/originals"))).toEqual(["a", "b", "c"]);
    expect((await found()).beads).toBe(0);
  });
});
