import { chmodSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { originalPath, viewPath } from "@/lib/photo/paths";
import { verifyRecords } from "@/lib/verify";
import { useFreshDb } from "../../setup/fresh-db";
import { fillWholeRecord, type WholeRecord } from "../../setup/whole-record";
import { inDepth, itDeep } from "../../setup/in-depth";

const fresh = useFreshDb();
let whole: WholeRecord;
/** A second hand on the same file, with the triggers and keys out of its way, as somebody with an editor has. */
let editor: Database.Database;

beforeAll(async () => {
  whole = await fillWholeRecord(fresh());
  editor = new Database(path.join(fresh().folder, "toeline.db"));
  editor.pragma("foreign_keys = OFF");
  editor.pragma("synchronous = OFF");
  const triggers = editor.prepare("SELECT name FROM sqlite_master WHERE type = 'trigger'").all();
  for (const { name } of triggers as { name: string }[]) editor.exec(`DROP TRIGGER "${name}"`);
});
afterAll(() => editor?.close());

const codes = async (): Promise<readonly string[]> =>
  (await verifyRecords(fresh().db, fresh().folder)).findings.map(({ code }) => code);

/** Does the damage, looks, and takes it back: what is found is the damage's, and nothing of it stays. */
async function foundAfter(damage: () => void, repair: () => void): Promise<readonly string[]> {
  damage();
  try {
    return await codes();
  } finally {
    repair();
  }
}

/** The accounts library's tables hold no record; Prisma's own holds the migrations. */
const notRecords = new Set([
  "User",
  "Session",
  "Account",
  "Verification",
  "Apikey",
  "SecondFactor",
  "Tries",
  "_prisma_migrations",
]);
/** Moves with every write and says nothing of its own, so no state holds it. */
const notState = "updatedAt";

type Row = Readonly<Record<string, unknown>> & { readonly rowid: number };
const quoted = (name: string) => `"${name}"`;
/** Follow from the records: no seal covers them, the verifier works them out again. */
const derivedTables = ["BeadFacts", "BeadFound", "BeadCard"] as const;
const isDerived = (table: string) => /^Bead(Facts|Found|Card|Words)/.test(table);
const recordTables = (): readonly string[] =>
  (editor.prepare("SELECT name FROM sqlite_master WHERE type = 'table'").all() as { name: string }[])
    .map(({ name }) => name)
    .filter((name) => !notRecords.has(name) && !isDerived(name) && !name.startsWith("sqlite_"));
const rowsOf = (table: string) =>
  editor.prepare(`SELECT rowid AS rowid, * FROM ${quoted(table)}`).all() as Row[];
const columnsOf = (row: Row) => Object.keys(row).filter((name) => name !== "rowid" && name !== notState);

/** The same value with one byte of it changed. */
function touched(value: unknown): unknown {
  if (value === null) return "x";
  if (typeof value === "number") return value + 1;
  const text = String(value);
  const at = text.length >> 1;
  return text === "" ? "x" : text.slice(0, at) + (text[at] === "0" ? "1" : "0") + text.slice(at + 1);
}

const setValue = (table: string, column: string, rowid: number, value: unknown) =>
  editor
    .prepare(`UPDATE ${quoted(table)} SET ${quoted(column)} = ? WHERE rowid = ?`)
    .run(value as string | number | null, rowid);

describe("the verifier", () => {
  it("has something to lose in every table, and finds nothing before anything is touched", async () => {
    expect(recordTables().length).toBe(29);
    for (const table of recordTables()) expect(rowsOf(table).length, table).toBeGreaterThan(0);
    expect(await codes()).toEqual([]);
  });

  it("finds one changed byte in every column of every table of the record", async () => {
    const missed: string[] = [];
    let tried = 0;
    for (const [t, table] of recordTables().entries()) {
      const rows = rowsOf(table);
      // Of the log the first, one in the middle and the last; of the others the newest row.
      const picked = table === "LogEntry" ? [rows[0], rows[rows.length >> 1], rows.at(-1)] : [rows.at(-1)];
      for (const row of picked) {
        if (!row) continue;
        // The ordinary run takes every so many-th column, beginning with another in each table; none is left out.
        const columns = columnsOf(row);
        const step = Math.min(inDepth(13, 1), columns.length);
        for (const column of columns.filter((_, i) => i % step === t % step)) {
          // The key of SQLite's own row is the row's number: it moves with the column.
          const at = column === "seq" ? Number(row["seq"]) + 1000 : row.rowid;
          const value = column === "seq" ? at : touched(row[column]);
          const found = await foundAfter(
            () => setValue(table, column, row.rowid, value),
            () => setValue(table, column, at, row[column]),
          );
          tried += 1;
          if (found.length === 0) missed.push(`${table}.${column}`);
        }
      }
    }
    expect(missed).toEqual([]);
    expect(tried).toBeGreaterThan(inDepth(20, 120));
    expect(await codes()).toEqual([]);
  });

  itDeep("says so where a derived row does not agree with its bead, and calls it nothing worse", async () => {
    const missed: string[] = [];
    // By what a row was worked out is no fact: with another it says nothing.
    const silent = new Set(["stamp", "weighedBy"]);
    for (const table of derivedTables)
      for (const row of rowsOf(table).slice(-1))
        for (const column of columnsOf(row).filter((name) => !silent.has(name) && name !== "number")) {
          const value = column === "card" ? touchedCard(String(row[column])) : touched(row[column]);
          const found = await foundAfter(
            () => setValue(table, column, row.rowid, value),
            () => setValue(table, column, row.rowid, row[column]),
          );
          if (!found.includes("facts-differ")) missed.push(`${table}.${column}`);
          expect(found.every((code) => ["facts-differ", "row-dangling"].includes(code))).toBe(true);
        }
    expect(missed).toEqual([]);
    expect(await codes()).toEqual([]);
  });

  it("finds a row taken out of every table, and a row put into it", async () => {
    const missed: string[] = [];
    for (const table of recordTables().filter((_, i) => i % inDepth(4, 1) === 0)) {
      const row = rowsOf(table).at(-1);
      if (!row) continue;
      const names = Object.keys(row).filter((name) => name !== "rowid");
      const put = (values: readonly unknown[]) =>
        editor
          .prepare(
            `INSERT INTO ${quoted(table)} (${names.map(quoted).join()}) VALUES (${names.map(() => "?").join()})`,
          )
          .run(...(values as string[]));
      const out = (rowid: number | bigint) =>
        editor.prepare(`DELETE FROM ${quoted(table)} WHERE rowid = ?`).run(rowid);
      const gone = await foundAfter(
        () => void out(row.rowid),
        () => void put(names.map((name) => row[name])),
      );
      // The log's last entry alone leaves a sound chain; that its subject is sealed otherwise is what shows.
      if (gone.length === 0) missed.push(`${table}: taken out`);
      let made: number | bigint = 0;
      const more = await foundAfter(
        // Every value another, so that no unique column is in the way.
        () => void (made = put(names.map((name) => other(name, row[name]))).lastInsertRowid),
        () => void out(made),
      );
      if (more.length === 0) missed.push(`${table}: put in`);
    }
    expect(missed).toEqual([]);
    expect(await codes()).toEqual([]);
  });

  it.each<[string, (last: number) => string, string]>([
    ["the log's head cut off", () => "seq = 1", "entry-missing"],
    ["its first half cut off", (last) => `seq <= ${last >> 1}`, "entry-missing"],
    ["its tail cut off", (last) => `seq > ${last - 3}`, "state-unlogged"],
    ["all of it", () => "1", "state-unlogged"],
  ])("finds %s", async (_, where, code) => {
    const rows = rowsOf("LogEntry");
    const names = columnsOf(rows[0]!);
    const found = await foundAfter(
      () => editor.exec(`DELETE FROM LogEntry WHERE ${where(rows.length)}`),
      () => {
        editor.exec("DELETE FROM LogEntry");
        const put = editor.prepare(
          `INSERT INTO LogEntry (${names.map(quoted).join()}) VALUES (${names.map(() => "?").join()})`,
        );
        for (const row of rows) put.run(...names.map((name) => row[name] as string));
      },
    );
    expect(found).toContain(code);
    expect(await codes()).toEqual([]);
  });

  it("finds two entries that changed places", async () => {
    const swap = () => {
      editor.exec("UPDATE LogEntry SET seq = -1 WHERE seq = 4");
      editor.exec("UPDATE LogEntry SET seq = 4 WHERE seq = 5");
      editor.exec("UPDATE LogEntry SET seq = 5 WHERE seq = -1");
    };
    expect(await foundAfter(swap, swap)).toEqual(
      expect.arrayContaining(["entry-changed", "entry-does-not-follow"]),
    );
    expect(await codes()).toEqual([]);
  });

  it("finds the first, the middle and the last byte of an original and of each picture made from it", async () => {
    const { folder } = fresh();
    const files: [string, string | null, string][] = [
      ["original", originalPath(folder, whole.sha256), "photo-changed"],
      ["view", viewPath(folder, whole.sha256, "view"), "view-changed"],
      ["small", viewPath(folder, whole.sha256, "small"), "view-changed"],
      ["thumb", viewPath(folder, whole.sha256, "thumb"), "view-changed"],
    ];
    for (const [name, file, code] of inDepth(files.slice(0, 2), files)) {
      if (file === null) throw new Error(name);
      chmodSync(file, 0o644);
      const sound = readFileSync(file);
      const damages = inDepth([sound.length >> 1], [0, sound.length >> 1, sound.length - 1]).map((at) => {
        const bytes = Buffer.from(sound);
        bytes[at]! ^= 1;
        return bytes;
      });
      damages.push(sound.subarray(0, -1), Buffer.concat([sound, Buffer.from([0])]));
      for (const bytes of damages) {
        const found = await foundAfter(
          () => writeFileSync(file, bytes),
          () => writeFileSync(file, sound),
        );
        expect(found, name).toEqual([code]);
      }
      const lost = await foundAfter(
        () => rmSync(file),
        () => writeFileSync(file, sound),
      );
      expect(lost, name).toEqual([name === "original" ? "photo-missing" : "view-changed"]);
    }
    expect(await codes()).toEqual([]);
  });
});

const touchedCard = (card: string): string =>
  card.replace(/"marks":\[/, '"marks":["spatter"').replace('"spatter""', '"spatter","');

/** Another value than this, fit for a further row: keys must differ, the rest may. */
function other(name: string, value: unknown): unknown {
  if (typeof value === "number" && /number|seq|version|revision/i.test(name)) return value + 500;
  if (typeof value === "string" && /id$|key|name|code|hash|sha256|subject/i.test(name)) return `${value}x`;
  return value;
}
