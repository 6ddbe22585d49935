import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { emptyBeadJudgement } from "@/lib/assess";
import { layMigrated } from "../../setup/migrated";
import { openDb } from "@/lib/db";
import { JobContentSchema } from "@/lib/inspect";
import { archiveOf, importArchive, importSentence } from "@/lib/archive";
import { createBead } from "@/lib/beads";
import { findPage } from "@/lib/find";
import { attachBead, createInspection, createJob, draftRecord } from "@/lib/jobs";
import {
  assessContext,
  getShopSet,
  listShopSets,
  newestVersions,
  saveShopSet,
  shopSetsToChoose,
  withdrawShopSet,
} from "@/lib/shop";
import { recordSentence, type Pen } from "@/lib/store";
import { verifyRecords } from "@/lib/verify";
import { useFreshDb } from "../../setup/fresh-db";
import { bytesOf, listBeads } from "../../setup/stored-beads";

const fresh = useFreshDb();
const width = (limit: number) => ({
  title: "Stringers, first week",
  note: "",
  rows: [
    { id: "width", title: "Width", imperfections: [], quantity: "width", limit, windowMm: null, note: "" },
  ],
});
const KEY = "shop-stringers-first-week";

async function addBead(pen: Pen, criteriaId: string, widthMm: number): Promise<string> {
  const made = await createBead(pen, {
    judgement: {
      ...emptyBeadJudgement,
      criteriaId,
      readings: [{ quantity: "width", value: widthMm, instrument: "Calliper", resolution: 0.05 }],
    },
  });
  if (!made.ok) throw new Error("no bead");
  return made.value.id;
}
const verdicts = async (pen: Pen) =>
  Object.fromEntries(
    (await findPage(pen.db, {}, {}, { at: "start", size: 50 })).beads.map(({ id, said }) => [
      id,
      said && said.verdict,
    ]),
  );

let beadId = "";

describe("the shop's own limits", () => {
  it("become version 1 under a key made of their title", async () => {
    const saved = await saveShopSet(fresh().pen, null, 0, width(9), "Instructor");
    expect(saved).toEqual({ ok: true, value: { key: KEY, version: 1, isNew: true } });
    expect(await getShopSet(fresh().db, `${KEY}@1`)).toMatchObject({
      version: 1,
      content: { id: KEY, author: "Instructor", rows: [{ limit: 9 }] },
    });
    expect((await saveShopSet(fresh().pen, null, 0, width(9), "Instructor")).ok).toBe(true);
    expect((await listShopSets(fresh().db)).map(({ key }) => key).sort()).toEqual([KEY, `${KEY}-2`]);
  });

  it("judge a bead that names them", async () => {
    beadId = await addBead(fresh().pen, `${KEY}@1`, 8);
    expect((await verdicts(fresh().pen))[beadId]).toBe("accept");
  });

  it("are never overwritten: a change is the next version, and the bead keeps its own", async () => {
    const saved = await saveShopSet(fresh().pen, KEY, 1, width(7), "Instructor");
    expect(saved).toMatchObject({ value: { version: 2, isNew: true } });
    const newBead = await addBead(fresh().pen, `${KEY}@2`, 8);
    expect(await verdicts(fresh().pen)).toMatchObject({ [beadId]: "accept", [newBead]: "reject" });
    expect(await getShopSet(fresh().db, `${KEY}@1`)).toMatchObject({ content: { rows: [{ limit: 9 }] } });
    await expect(
      fresh().db.shopCriteria.update({ where: { id: `${KEY}@1` }, data: { content: {} } }),
    ).rejects.toThrow();
  });

  it("make no version where nothing changed, and none over another window's", async () => {
    expect(await saveShopSet(fresh().pen, KEY, 2, width(7), "Owner")).toMatchObject({
      value: { version: 2, isNew: false },
    });
    const refused = await saveShopSet(fresh().pen, KEY, 1, width(6), "Instructor");
    expect(refused).toMatchObject({ issues: [{ code: "criteria-changed-elsewhere", data: { version: 2 } }] });
    expect(await saveShopSet(fresh().pen, "shop-none", 1, width(6), "Instructor")).toMatchObject({
      issues: [{ code: "criteria-gone" }],
    });
  });

  it("are refused at the field that does not fit", async () => {
    const draft = { ...width(9), title: "", rows: [{ ...width(9).rows[0], limit: null }] };
    const refused = await saveShopSet(fresh().pen, null, 0, draft, "Instructor");
    expect(refused.ok ? [] : refused.issues.map((one) => one.path.join("."))).toEqual([
      "title",
      "rows.0.limit",
    ]);
    expect(refused.ok ? "" : recordSentence(refused.issues[1]!)).toContain("rows › 1 › limit");
    expect(await saveShopSet(fresh().pen, null, 0, "nonsense", "Instructor")).toMatchObject({ ok: false });
  });

  it("are offered newest first, with an older one only to what names it", async () => {
    const ids = async (chosen: string | null) =>
      (await shopSetsToChoose(fresh().db, [chosen])).map(({ id, version }) => `${id}@${version}`);
    expect(await ids(null)).toEqual([`${KEY}@2`, `${KEY}-2@1`]);
    expect(await ids(`${KEY}@1`)).toEqual([`${KEY}@2`, `${KEY}-2@1`, `${KEY}@1`]);
  });

  it("are withdrawn, not deleted: no choice offers them, and the bead is still judged", async () => {
    expect((await withdrawShopSet(fresh().pen, KEY, new Date("2026-11-25T10:00:00Z"))).ok).toBe(true);
    expect((await shopSetsToChoose(fresh().db)).map(({ id }) => id)).toEqual([`${KEY}-2`]);
    expect((await verdicts(fresh().pen))[beadId]).toBe("accept");
    expect(newestVersions(await listShopSets(fresh().db)).find(({ key }) => key === KEY)).toMatchObject({
      version: 2,
      withdrawnAt: "2026-11-25T10:00:00.000Z",
    });
    await withdrawShopSet(fresh().pen, KEY, null);
    expect(await withdrawShopSet(fresh().pen, "shop-none", null)).toMatchObject({ ok: false });
  });

  it("leave an entry in the log for each change, and nothing for the verifier to find", async () => {
    const entries = await fresh().db.logEntry.findMany({ orderBy: { seq: "asc" } });
    const of = entries.filter(({ subject }) => subject.startsWith(`criteria:${KEY}@`));
    expect(of.map(({ subject, action }) => [subject.split("@")[1], action])).toEqual([
      ["1", "criteria.saved"],
      ["2", "criteria.saved"],
      ["2", "criteria.withdrawn"],
      ["2", "criteria.back"],
    ]);
    expect((await verifyRecords(fresh().db, fresh().folder)).findings).toEqual([]);
  });

  it("stand whole in the record that is signed, and in its words", async () => {
    const { pen, db } = fresh();
    const content = JobContentSchema.parse({
      title: "Job",
      criteriaId: `${KEY}@1`,
      welds: [{ id: "w1", number: "W1" }],
    });
    const job = await createJob(pen, content);
    if (!job.ok) throw new Error("no job");
    await attachBead(pen, beadId, { jobId: job.value.id, weldId: "w1" });
    const begun = await createInspection(pen, job.value.id);
    const record = begun.ok ? await draftRecord(db, begun.value.id) : null;
    expect(record?.job.criteria).toBe("Stringers, first week, version 1 (the shop's own)");
    expect(record?.shopSets).toEqual([(await getShopSet(db, `${KEY}@1`))?.content]);
    expect(record?.beads[0]?.verdict).toMatchObject({
      criteriaId: `${KEY}@1`,
      edition: "version 1 (the shop's own)",
    });
  });
});

describe("in an archive", () => {
  const folders: string[] = [];
  const closing: (() => Promise<void>)[] = [];
  let archive: Uint8Array;

  async function shop(): Promise<{ readonly pen: Pen; readonly folder: string }> {
    const folder = mkdtempSync(path.join(tmpdir(), "toeline-limits-"));
    const url = `file:${path.join(folder, "toeline.db")}`;
    await layMigrated(url.slice("file:".length));
    const db = openDb(url);
    folders.push(folder);
    closing.push(() => db.$disconnect());
    return { pen: { db, by: "test" }, folder };
  }
  const pack = async (pen: Pen, folder: string): Promise<Uint8Array> => {
    const { shopSets } = await assessContext(pen.db);
    const packed = await archiveOf(folder, await listBeads(pen.db), shopSets);
    if (!packed.ok) throw new Error(packed.issues[0]?.code);
    return bytesOf(packed.value);
  };
  beforeAll(async () => {
    archive = await pack(fresh().pen, fresh().folder);
  });
  afterAll(async () => {
    for (const close of closing) await close();
    for (const folder of folders) rmSync(folder, { recursive: true, force: true });
  });

  it("the limits come along: same verdicts there, the same bytes out again, and a sound log", async () => {
    const to = await shop();
    const plan = await importArchive(to.pen, to.folder, archive);
    expect(plan.ok && plan.value.criteria.map(({ id, fate }) => [id, fate])).toEqual([
      [`${KEY}@1`, "new"],
      [`${KEY}@2`, "new"],
    ]);
    expect(await verdicts(to.pen)).toEqual(await verdicts(fresh().pen));
    expect(Buffer.compare(Buffer.from(await pack(to.pen, to.folder)), Buffer.from(archive))).toBe(0);
    expect((await verifyRecords(to.pen.db, to.folder)).findings).toEqual([]);
    const again = await importArchive(to.pen, to.folder, archive);
    expect(again).toMatchObject({ value: { fresh: 0, criteria: [{ fate: "same" }, { fate: "same" }] } });
  });

  it("keep the names of clauses they did not carry; a name taken off is a new version", async () => {
    const to = await shop();
    const clauses = [
      { clause: "1.20", title: "Insufficient throat", why: "it follows the throat asked for" },
    ];
    const draft = { ...width(7), title: "Copied", notCarried: { from: "a code", clauses } };
    const first = await saveShopSet(to.pen, null, 0, draft, "Instructor");
    expect(first).toMatchObject({ ok: true, value: { version: 1 } });
    expect((await getShopSet(to.pen.db, "shop-copied@1"))?.content.notCarried).toEqual(draft.notCarried);
    const less = { ...draft, notCarried: { from: "a code", clauses: [] } };
    const again = await saveShopSet(to.pen, "shop-copied", 1, draft, "Instructor");
    expect(again).toMatchObject({ value: { version: 1, isNew: false } });
    const next = await saveShopSet(to.pen, "shop-copied", 1, less, "Instructor");
    expect(next).toMatchObject({ value: { version: 2, isNew: true } });
  });

  it("a version that is here with other content stops it, whole, in a sentence", async () => {
    const to = await shop();
    await saveShopSet(to.pen, null, 0, width(5), "Instructor");
    const entries = await to.pen.db.logEntry.count();
    for (const leaveConflicts of [false, true]) {
      const refused = await importArchive(to.pen, to.folder, archive, { leaveConflicts });
      expect(refused).toMatchObject({
        issues: [{ code: "import-criteria-differ", data: { id: `${KEY}@1` } }],
      });
      expect(refused.ok ? "" : importSentence(refused.issues[0]!)).toContain("nothing was imported");
    }
    expect(await to.pen.db.bead.count()).toBe(0);
    expect((await listShopSets(to.pen.db)).map(({ id }) => id)).toEqual([`${KEY}@1`]);
    expect(await to.pen.db.logEntry.count()).toBe(entries);
  });
});
