import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { importArchive } from "@/lib/archive";
import {
  createJob,
  draftRecord,
  getInspection,
  getJob,
  listInspections,
  listSigned,
  saveInspection,
} from "@/lib/jobs";
import { verifyRecords } from "@/lib/verify";
import { checkFrozen } from "@/lib/verify/signatures";
import { findingsOf } from "../../setup/findings-of";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();
const fixture = (name: string) => readFileSync(new URL(`../../fixtures/older/${name}`, import.meta.url));
const sha256 = (text: string | Uint8Array) => createHash("sha256").update(text).digest("hex");

/** Written by the program when extents were free texts: a job of one weld, signed with "100 %" seen. */
const archive = fixture("job-archive-3.zip");
/** Signed then: 100 % asked, 20 % seen, "accepted". */
const signedText = fixture("signed-record-1.txt").toString("utf8");

describe("an archive from when extents were free texts", () => {
  it("is taken, its signed text byte for byte, and is the same job when it comes again", async () => {
    const { pen, folder, db } = fresh();
    const manifest = JSON.parse(new TextDecoder().decode(unzipSync(archive)["manifest.json"]));
    expect(manifest.schemaVersion).toBe(3);
    const [sent] = manifest.jobs[0].inspections[0].signed;
    expect(await importArchive(pen, folder, archive)).toMatchObject({
      ok: true,
      value: { jobs: [{ fate: "new", inspections: 1 }] },
    });
    const [inspection] = await listInspections(db);
    const [signed] = await listSigned(db, inspection?.id ?? "");
    expect(signed).toMatchObject({ intact: true, digest: sent.digest });
    const row = await db.signedRevision.findFirstOrThrow();
    expect(row.content).toBe(sent.content);
    expect(signed?.record?.draft.welds).toEqual([
      { weldId: "w1", seen: { kind: "percent", percent: 100 }, seenNote: "" },
    ]);
    // That job said nothing of how much was asked.
    expect(signed?.record?.job.content.welds[0]).toMatchObject({ asked: null, askedNote: "" });
    expect((await verifyRecords(db, folder)).findings).toEqual([]);
    expect(await importArchive(pen, folder, archive)).toMatchObject({ value: { jobs: [{ fate: "same" }] } });
  });
});

describe("rows from when extents were free texts", () => {
  it("are read, and what is no number is open at its weld until somebody writes one", async () => {
    const { pen, db } = fresh();
    const made = await createJob(pen, { title: "Older" });
    if (!made.ok) throw new Error("no job");
    const jobId = made.value.id;
    const welds = [
      { id: "w1", number: "W1", quantity: "100 %" },
      { id: "w2", number: "W2", quantity: "both ends" },
    ];
    await db.job.update({
      where: { id: jobId },
      data: { content: { schemaVersion: 1, title: "Older", welds } },
    });
    const looked = [
      { weldId: "w1", quantity: "most of it" },
      { weldId: "w2", quantity: "100 %" },
    ];
    const draft = { schemaVersion: 1, open: true, welds: looked };
    await db.inspection.create({ data: { id: "older", number: 900, jobId, draft } });
    expect(
      (await getJob(db, jobId))?.content.welds.map(({ asked, askedNote }) => [asked, askedNote]),
    ).toEqual([
      [{ kind: "percent", percent: 100 }, ""],
      [null, "both ends"],
    ]);
    const record = await draftRecord(db, "older");
    const said = record?.points.filter(({ code }) => code.startsWith("extent-"));
    expect(said?.map(({ code, weldId }) => [code, weldId])).toEqual([
      ["extent-seen-unknown", "w1"],
      ["extent-asked-unknown", "w2"],
    ]);
    expect(said?.[0]?.sentence).toContain("most of it");
    expect(record?.weldResults.map(({ result }) => result)).toEqual(["open", "open"]);

    // A window that was open before still speaks the older shape.
    expect((await saveInspection(pen, "older", 1, { ...draft, welds: [looked[1]] })).ok).toBe(true);
    expect((await getInspection(db, "older"))?.draft.welds).toEqual([
      { weldId: "w2", seen: { kind: "percent", percent: 100 }, seenNote: "" },
    ]);
  });

  it("that are signed keep their text, their digest and what they said", async () => {
    const { db } = fresh();
    const digest = sha256(signedText);
    await db.signedRevision.create({
      data: {
        id: "older-signed",
        inspectionId: "older",
        revision: 1,
        content: signedText,
        digest,
        signedById: "pi",
        signedAt: "2026-11-25T12:00:00.000Z",
        reason: null,
      },
    });
    const [signed] = await listSigned(db, "older");
    expect(signed).toMatchObject({ intact: true, digest });
    expect(signed?.record).toMatchObject({ schemaVersion: 2, result: "accepted" });
    const found = await findingsOf(checkFrozen(db, null));
    expect(found.filter(({ code }) => code === "text-changed")).toEqual([]);
  });
});
