import { spawnSync } from "node:child_process";
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { Readable } from "node:stream";
import Database from "better-sqlite3";
import { build } from "esbuild";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { entryNumber } from "@/app/log/entry-number";
import { createBead } from "@/lib/beads";
import { migrate } from "@/lib/cli/prepare.mjs";
import { openDb } from "@/lib/db";
import { checkData } from "@/lib/mend";
import { receivePhoto } from "@/lib/photo";
import { clockBehindMs } from "@/lib/store";
import { verifyRecords } from "@/lib/verify";
import { layMigrated } from "../setup/migrated";
import { smallBead, smallPhoto } from "../setup/small-shop";
import { itDeep } from "../setup/in-depth";

const root = fileURLToPath(new URL("../..", import.meta.url));
let work = "";
beforeAll(() => (work = mkdtempSync(path.join(tmpdir(), "toeline-broken-"))));
afterAll(() => rmSync(work, { recursive: true, force: true }));

let made = 0;
/** A migrated data folder of its own. */
async function folder(): Promise<string> {
  const one = path.join(work, `folder-${(made += 1)}`);
  mkdirSync(one);
  await layMigrated(path.join(one, "toeline.db"));
  return one;
}

async function withDb<T>(one: string, run: (db: ReturnType<typeof openDb>) => Promise<T>): Promise<T> {
  const db = openDb(`file:${path.join(one, "toeline.db")}`);
  try {
    return await run(db);
  } finally {
    await db.$disconnect();
  }
}

const refusedStart = (one: string) =>
  migrate(one).then(
    () => "",
    (error: Error) => error.message,
  );

describe("a start", () => {
  it("says in one sentence what is wrong with a folder, and the way out; nothing is changed", async () => {
    const damaged = await folder();
    writeFileSync(path.join(damaged, "toeline.db"), "this was a database once".repeat(400));
    expect(await refusedStart(damaged)).toMatch(/is damaged .*not a database.* npm run restore -- BACKUP$/);
    expect(readFileSync(path.join(damaged, "toeline.db"), "utf8")).toMatch(/^this was/);

    const newer = await folder();
    const file = new Database(path.join(newer, "toeline.db"));
    file.exec(
      `INSERT INTO _prisma_migrations (id, checksum, migration_name, finished_at, started_at, applied_steps_count) VALUES ('x', 'x', '29990101000000_later', 1, 1, 1)`,
    );
    file.close();
    expect(await refusedStart(newer)).toMatch(/newer Toeline.* npm run restore -- BACKUP$/);

    writeFileSync(path.join(work, "a-file"), "");
    expect(await refusedStart(path.join(work, "a-file/in"))).toMatch(/cannot be used .*TOELINE_DATA=/);
    expect(await refusedStart(await folder())).toBe("");
  });

  it("makes a migration to a copy: one that was cut off leaves the database as it was", async () => {
    const one = path.join(work, "cut-off");
    mkdirSync(path.join(one, "migrating"), { recursive: true });
    writeFileSync(path.join(one, "migrating/toeline.db"), "half of something");
    await migrate(one);
    expect(existsSync(path.join(one, "migrating"))).toBe(false);
    await withDb(one, async (db) => expect(await checkData(db, one, { isServed: false })).toEqual([]));
  });
});

describe("a folder that nobody may write to", () => {
  it("is told in a sentence for rows and for photos; reading goes on", async () => {
    const one = await folder();
    await withDb(one, async (db) => {
      const pen = { db, by: "test" };
      expect((await createBead(pen, { title: "before" })).ok).toBe(true);
      // What the system answers of a file that may not be written; the tests may run as one who may everything.
      await db.$queryRawUnsafe("PRAGMA query_only = 1");
      const refused = await createBead(pen, { title: "after" });
      expect(refused).toMatchObject({ ok: false, issues: [{ code: "store-unusable" }] });
      expect(await db.bead.count()).toBe(1);
    });
    writeFileSync(path.join(one, "photos"), "");
    const photo = await receivePhoto(one, Readable.from([await smallPhoto(1)]), { declaredBytes: null });
    expect(photo).toMatchObject({ ok: false, issues: [{ code: "photo-store-unusable" }] });
  });
});

describe("a process that runs short", () => {
  /** Under a limit of the shell's own, in a process of its own. */
  const narrowed = async (limit: string, what: string) => {
    const outfile = path.join(root, "tests/.out/narrow.mjs");
    await build({
      entryPoints: [path.join(root, "tests/faults/narrow.ts")],
      ...{ outfile, bundle: true, platform: "node", format: "esm", packages: "external" },
      alias: { "server-only": path.join(root, "tests/setup/server-only.ts") },
      tsconfig: path.join(root, "tsconfig.json"),
      logLevel: "error",
    });
    const one = await folder();
    const { stdout, stderr } = spawnSync(
      "bash",
      ["-c", `ulimit ${limit} && exec "$0" "$@"`, process.execPath, outfile, one, what],
      { cwd: root, encoding: "utf8", env: { ...process.env, NODE_OPTIONS: "" } },
    );
    expect(stderr).toBe("");
    return JSON.parse(stdout) as Record<string, string>;
  };

  it("of open files refuses in words, and goes on when there are some again", async () => {
    expect(await narrowed("-n 200", "handles")).toEqual({
      bead: "store-unusable",
      photo: "photo-store-unusable",
      "bead afterwards": "ok",
      "photo afterwards": "ok",
    });
  });

  itDeep("of file size refuses in words, and what is there can be read", async () => {
    expect(await narrowed("-f 620", "files")).toEqual({
      bead: "ok",
      photo: "ok",
      "beads until full": "store-unusable",
      reading: "ok",
    });
  });
});

describe("a clock that is put back", () => {
  it("leaves a log that verifies: no entry is dated before the one it follows, and it says what the clock said", async () => {
    const one = await folder();
    vi.useFakeTimers({ toFake: ["Date"] });
    try {
      await withDb(one, async (db) => {
        const pen = { db, by: "test" };
        vi.setSystemTime("2027-03-01T10:00:00Z");
        await createBead(pen, { title: "first" });
        vi.setSystemTime("2027-03-01T09:00:00Z");
        expect(await clockBehindMs(db, new Date())).toBe(3_600_000);
        await createBead(pen, { title: "an hour back" });
        vi.setSystemTime("2027-03-01T10:30:00Z");
        expect(await clockBehindMs(db, new Date())).toBe(0);
        await createBead(pen, { title: "right again" });
        const entries = await db.logEntry.findMany({ orderBy: { seq: "asc" } });
        expect(entries.map(({ at }) => at.slice(11, 16))).toEqual(["10:00", "10:00", "10:30"]);
        expect(entries.map(({ detail }) => detail.includes("clockSaid"))).toEqual([false, true, false]);
        const { findings, remarks } = await verifyRecords(db, one);
        expect([findings, remarks]).toEqual([[], []]);
      });
    } finally {
      vi.useRealTimers();
    }
  });

  it("of an earlier version is a remark, and no finding that stays for ever", async () => {
    const one = await folder();
    await withDb(one, async (db) => {
      const pen = { db, by: "test" };
      await createBead(pen, { title: "first" });
      await createBead(pen, { title: "second" });
    });
    const file = new Database(path.join(one, "toeline.db"));
    const { nextEntry } = await import("@/lib/ledger");
    const { sha256Text } = await import("@/lib/store");
    const rows = file.prepare("SELECT * FROM LogEntry ORDER BY seq").all() as Parameters<
      typeof nextEntry
    >[1][];
    for (const { name } of file.prepare("SELECT name FROM sqlite_master WHERE type = 'trigger'").all() as {
      name: string;
    }[])
      file.exec(`DROP TRIGGER "${name}"`);
    const first = nextEntry(null, rows[0]!, sha256Text);
    const back = nextEntry(first, { ...rows[1]!, at: "2020-01-01T00:00:00.000Z" }, sha256Text);
    file.prepare("UPDATE LogEntry SET at = ?, hash = ? WHERE seq = 2").run(back.at, back.hash);
    file.close();
    await withDb(one, async (db) => {
      const { findings, remarks } = await verifyRecords(db, one);
      expect(findings).toEqual([]);
      expect(remarks.map(({ code }) => code)).toEqual(["time-runs-back"]);
    });
  });
});

describe("a damaged page of the database", () => {
  it("is explained, and no further question is asked of it", async () => {
    const one = await folder();
    await withDb(one, (db) => smallBead({ db, by: "test" }, one, 3));
    const file = path.join(one, "toeline.db");
    copyFileSync(file, `${file}.sound`);
    const bytes = readFileSync(file);
    for (let at = 4096 * 20; at < bytes.length; at += 4096) bytes.fill(0xff, at, at + 64);
    writeFileSync(file, bytes);
    await withDb(one, async (db) =>
      expect((await checkData(db, one, { isServed: false })).map(({ code }) => code)).toEqual([
        "database-damaged",
      ]),
    );
  });
});

describe("the number of an entry in an address", () => {
  it("is a number there can be, or none", () => {
    expect(["12", "2147483647"].map(entryNumber)).toEqual([12, 2_147_483_647]);
    for (const one of ["99999999999999999999", "2147483648", "1e9", "-3", "0", "x", "", undefined, ["3"]])
      expect(entryNumber(one), String(one)).toBeNull();
  });
});
