import { createHash } from "node:crypto";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { strToU8, unzipSync, zipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { layMigrated } from "../../setup/migrated";
import { openDb } from "@/lib/db";
import { originalPath } from "@/lib/photo/paths";
import { archiveOf, importArchive, jobsAlong } from "@/lib/archive";
import { getBead, removePhoto } from "@/lib/beads";
import { createJob, listInspections, listSigned, saveJob } from "@/lib/jobs";
import { verifyRecords } from "@/lib/verify";
import { useFreshDb, type FreshDb } from "../../setup/fresh-db";
import { fillWholeRecord, type WholeRecord } from "../../setup/whole-record";
import { bytesOf, listBeads } from "../../setup/stored-beads";

const fresh = useFreshDb();
let whole: WholeRecord;
let archive: Uint8Array;
const shops: FreshDb[] = [];

async function emptyShop(): Promise<FreshDb> {
  const folder = mkdtempSync(path.join(tmpdir(), "toeline-shop-"));
  const url = `file:${path.join(folder, "toeline.db")}`;
  await layMigrated(url.slice("file:".length));
  const db = openDb(url);
  shops.push({ db, pen: { db, by: "test" }, folder, url });
  return shops.at(-1)!;
}

/** The job whole, as its page offers it. */
async function packed({ db, folder }: FreshDb): Promise<Uint8Array> {
  const beads = (await listBeads(db)).filter(({ jobId }) => jobId === whole.jobId);
  const made = await archiveOf(folder, beads, [], await jobsAlong(db, folder, [whole.jobId]));
  if (!made.ok) throw new Error(made.issues[0]?.code);
  return bytesOf(made.value);
}
const text = (bytes: Uint8Array) => Buffer.from(bytes).toString("latin1");

beforeAll(async () => {
  whole = await fillWholeRecord(fresh());
  // The signed record still speaks of the photo when the bead no longer carries it.
  const bead = await getBead(fresh().db, whole.beadId);
  await removePhoto(fresh().pen, whole.beadId, bead?.photos[0]?.id ?? "");
  archive = await packed(fresh());
});
afterAll(async () => {
  for (const { db, folder } of shops) {
    await db.$disconnect();
    rmSync(folder, { recursive: true, force: true });
  }
});

describe("a job as one archive", () => {
  it("carries its beads, inspections, signed records and their photos, and no person", () => {
    const names = Object.keys(unzipSync(archive));
    expect(names).toContain(`photos/${whole.sha256}.jpeg`);
    expect(text(archive)).toContain("W-07");
    for (const name of ["Vesna", "Ling"]) expect(text(archive)).not.toContain(name);
  });

  it("out, into an empty installation, out again: identical bytes, and everything verifies there", async () => {
    const to = await emptyShop();
    const plan = await importArchive(to.pen, to.folder, archive);
    expect(plan).toMatchObject({ ok: true, value: { fresh: 1, jobs: [{ fate: "new", inspections: 1 }] } });
    expect(Buffer.compare(Buffer.from(await packed(to)), Buffer.from(archive))).toBe(0);
    const [inspection] = await listInspections(to.db, { jobId: whole.jobId });
    const [signed] = await listSigned(to.db, inspection?.id ?? "");
    expect(signed).toMatchObject({ intact: true, revision: 1 });
    expect(signed?.record?.draft.lightLux).toBe(520);
    expect(existsSync(originalPath(to.folder, whole.sha256) ?? "")).toBe(true);
    expect((await verifyRecords(to.db, to.folder)).findings).toEqual([]);
    // Again changes nothing.
    const entries = await to.db.logEntry.count();
    const again = await importArchive(to.pen, to.folder, archive);
    expect(again).toMatchObject({ ok: true, value: { fresh: 0, same: 1, jobs: [{ fate: "same" }] } });
    expect(await to.db.logEntry.count()).toBe(entries);
  });

  it("is the same job where it came from; a changed one is a conflict", async () => {
    const { db, pen, folder } = fresh();
    expect(await importArchive(pen, folder, archive)).toMatchObject({ value: { jobs: [{ fate: "same" }] } });
    const to = await emptyShop();
    await importArchive(to.pen, to.folder, archive);
    const job = await to.db.job.findUniqueOrThrow({ where: { id: whole.jobId } });
    await saveJob(to.pen, job.id, job.revision, { ...(job.content as object), title: "Another title" });
    expect(await importArchive(to.pen, to.folder, archive)).toMatchObject({
      ok: false,
      issues: [{ code: "import-conflicts", data: { conflicts: 1 } }],
    });
    expect((await verifyRecords(db, folder)).findings).toEqual([]);
  });

  it("gets free numbers where its own are taken", async () => {
    const to = await emptyShop();
    await createJob(to.pen, { title: "Ours" });
    expect(await importArchive(to.pen, to.folder, archive)).toMatchObject({
      ok: true,
      value: { jobs: [{ ownNumber: 1, number: 2 }] },
    });
    expect((await verifyRecords(to.db, to.folder)).findings).toEqual([]);
  });

  it("with a signed record that was changed is refused, and leaves nothing", async () => {
    const files = unzipSync(archive);
    const manifest = new TextDecoder().decode(files["manifest.json"]);
    const changed = manifest.replace(/\\"lightLux\\":520/, '\\"lightLux\\":529');
    expect(changed).not.toBe(manifest);
    files["manifest.json"] = strToU8(changed);
    const digest = createHash("sha256").update(changed).digest("hex");
    files["manifest.json.sha256"] = strToU8(`${digest}  manifest.json\n`);
    const to = await emptyShop();
    const refused = await importArchive(to.pen, to.folder, zipSync(files, { level: 0 }));
    expect(refused).toMatchObject({ ok: false, issues: [{ code: "import-signed-changed" }] });
    expect(await to.db.job.count()).toBe(0);
    expect(existsSync(originalPath(to.folder, whole.sha256) ?? "")).toBe(false);
    expect(readFileSync(originalPath(fresh().folder, whole.sha256) ?? "").length).toBeGreaterThan(0);
  });
});
