import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import Database from "better-sqlite3";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { removePhoto } from "@/lib/beads";
import { checkData, collectStrays, dataSentence, mendData } from "@/lib/mend";
import { canMend } from "@/lib/mend/issue";
import { eraseStrays } from "@/lib/photo";
import { originalPath, viewPath } from "@/lib/photo/paths";
import { useFreshDb } from "../../setup/fresh-db";
import { smallBead, type SmallBead } from "../../setup/small-shop";

const fresh = useFreshDb();
const now = new Date("2026-11-26T12:00:00Z");
let bead: SmallBead;
let editor: Database.Database;

beforeAll(async () => {
  bead = await smallBead(fresh().pen, fresh().folder, 1);
  editor = new Database(path.join(fresh().folder, "toeline.db"));
});
afterAll(() => editor.close());

const at = (...parts: string[]) => path.join(fresh().folder, ...parts);
const look = async (isServed = false) =>
  (await checkData(fresh().db, fresh().folder, { isServed })).map(({ code }) => code);
const mend = async () => {
  const { mended, left } = await mendData(fresh().db, fresh().folder, now);
  return { mended: mended.map(({ code }) => code), left: left.map(({ code }) => code) };
};
const STRAY = "ab".repeat(32);
const view = () => viewPath(fresh().folder, bead.sha256, "view")!;
const meta = () => path.join(path.dirname(view()), "meta.json");

function write(file: string, text: string | Buffer) {
  mkdirSync(path.dirname(file), { recursive: true });
  if (existsSync(file)) chmodSync(file, 0o600);
  writeFileSync(file, text);
}

describe("a data folder", () => {
  it("in which all belongs together has no finding", async () => {
    expect(await look()).toEqual([]);
    expect(await mend()).toEqual({ mended: [], left: [] });
  });

  it("is rid of what a crash left: strays put aside for 30 days, half uploads and halves of fillings cleared", async () => {
    write(at("photos/originals", STRAY), "a photo of nobody");
    write(at("photos/views", "cd".repeat(32), "view.jpg"), "x");
    write(at("photos/incoming/half/original"), "x");
    write(at("restoring/toeline.db"), "x");
    const all = ["left-aside", "left-uploads", "stray-original", "stray-views"];
    expect((await look()).sort()).toEqual(all);
    // While somebody serves it an upload on its way looks just like that.
    expect(await look(true)).toEqual([]);
    const told = await collectStrays(fresh().db, fresh().folder, now);
    expect(told.map(({ code }) => code).sort()).toEqual(all);
    expect(await look()).toEqual([]);
    expect(readFileSync(at("photos/strays", STRAY), "utf8")).toBe("a photo of nobody");
    expect(readdirSync(at("photos/incoming"))).toEqual([]);
    const days = (count: number) => new Date(now.getTime() + count * 24 * 3_600_000);
    expect(await eraseStrays(fresh().folder, days(29))).toBe(0);
    expect(await eraseStrays(fresh().folder, days(31))).toBe(1);
  });

  it("keeps a photo that was taken off its bead: it is evidence, not a stray", async () => {
    const other = await smallBead(fresh().pen, fresh().folder, 2);
    const row = await fresh().db.photo.findFirst({ where: { beadId: other.id } });
    expect((await removePhoto(fresh().pen, other.id, row!.id)).ok).toBe(true);
    expect(await look()).toEqual([]);
    expect(await collectStrays(fresh().db, fresh().folder, now)).toEqual([]);
    expect(existsSync(originalPath(fresh().folder, other.sha256)!)).toBe(true);
  });

  it.each<[string, () => void, string]>([
    ["a picture that was taken away", () => rmSync(view()), "view-changed"],
    ["a picture that was painted over", () => write(view(), "other"), "view-changed"],
    ["notes beside a photo that are gone", () => rmSync(meta()), "meta-differs"],
    ["notes beside a photo that are no JSON", () => write(meta(), "{"), "meta-differs"],
    [
      "notes that say another size",
      () => write(meta(), readFileSync(meta(), "utf8").replace('"widthPx": 160', '"widthPx": 1600')),
      "meta-differs",
    ],
    [
      "a derived row that says something else",
      () => editor.exec(`UPDATE "BeadFacts" SET "photos" = 7 WHERE "beadId" = '${bead.id}'`),
      "facts-differ",
    ],
    [
      "a derived row that is to be worked out",
      () => editor.exec(`UPDATE "BeadFacts" SET "stamp" = '' WHERE "beadId" = '${bead.id}'`),
      "facts-stale",
    ],
  ])("mends %s, to the byte", async (_, damage, code) => {
    const before = [view(), meta()].map((file) => readFileSync(file));
    damage();
    expect(await look()).toContain(code);
    const { mended, left } = await mend();
    expect(mended).toContain(code);
    expect(left).toEqual([]);
    expect([view(), meta()].map((file) => readFileSync(file))).toEqual(before);
  });

  it.each<[string, () => () => void, string]>([
    [
      "an original of other bytes",
      () => {
        const file = originalPath(fresh().folder, bead.sha256)!;
        const sound = readFileSync(file);
        write(file, Buffer.concat([sound, Buffer.from("x")]));
        return () => write(file, sound);
      },
      "photo-changed",
    ],
    [
      "an original that is gone",
      () => {
        const file = originalPath(fresh().folder, bead.sha256)!;
        const sound = readFileSync(file);
        rmSync(file, { force: true });
        return () => write(file, sound);
      },
      "photo-missing",
    ],
    [
      "a bead changed by hand",
      () => {
        editor.exec(`UPDATE "Bead" SET "title" = 'other' WHERE "id" = '${bead.id}'`);
        return () => editor.exec(`UPDATE "Bead" SET "title" = 'Small 1, marked' WHERE "id" = '${bead.id}'`);
      },
      "state-changed",
    ],
    [
      "a guard taken out",
      () => {
        const { name, sql } = editor
          .prepare("SELECT name, sql FROM sqlite_master WHERE type = 'trigger' LIMIT 1")
          .get() as { name: string; sql: string };
        editor.exec(`DROP TRIGGER "${name}"`);
        return () => editor.exec(sql);
      },
      "trigger-missing",
    ],
    [
      "something of somebody's in the store",
      () => {
        write(at("photos/originals/holiday.jpg"), "x");
        return () => rmSync(at("photos/originals/holiday.jpg"));
      },
      "odd-file",
    ],
    [
      "a database of an earlier version",
      () => {
        const last = `(SELECT "migration_name" FROM "_prisma_migrations" ORDER BY "migration_name" DESC LIMIT 1)`;
        editor.exec(`UPDATE "_prisma_migrations" SET "finished_at" = NULL WHERE "migration_name" = ${last}`);
        return () =>
          editor.exec(`UPDATE "_prisma_migrations" SET "finished_at" = 1 WHERE "finished_at" IS NULL`);
      },
      "migration-open",
    ],
  ])("tells of %s, and leaves it as it is", async (_, damage, code) => {
    const repair = damage();
    const found = await checkData(fresh().db, fresh().folder, { isServed: false });
    expect(found.map((one) => one.code)).toContain(code);
    const one = found.find((finding) => finding.code === code)!;
    expect(canMend(one)).toBe(false);
    expect(dataSentence(one)).toMatch(/\. [A-Z].+\.|BACKUP$/);
    expect((await mend()).left).toContain(code);
    repair();
    await mend();
    expect(await look()).toEqual([]);
  });
});
