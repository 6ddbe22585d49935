import { chmodSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createReadStream } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import Database from "better-sqlite3";
import { beforeAll, describe, expect, it } from "vitest";
import { emptyBeadContent } from "@/lib/assess";
import { ok } from "@/lib/base";
import { receivePhoto } from "@/lib/photo";
import { originalPath } from "@/lib/photo/paths";
import { addPhoto, createBead, saveBead } from "@/lib/beads";
import { listSigned } from "@/lib/jobs";
import { standingSentence } from "@/lib/signature";
import { addPerson, getPerson, removePerson } from "@/lib/roster";
import { RunSetupSchema } from "@/lib/setup";
import { listSavedSetups, saveSetup } from "@/lib/shop";
import { sha256Text } from "@/lib/store";
import { verifyRecords } from "@/lib/verify";
import { allSubjects } from "@/lib/store/subjects";
import {} from "@/lib/beads/beads";
import { deleteBead } from "@/lib/beads/deleted-beads";
import { newId } from "@/lib/store/new-id";
import { writing } from "@/lib/store/pen";
import { sealRecord } from "@/lib/inspect";
import { filesWith } from "../../setup/files-with";
import { useFreshDb } from "../../setup/fresh-db";
import { beadOf, recordOf } from "../inspect/build";

const fresh = useFreshDb();
const picture = fileURLToPath(new URL("../../../demo-images/set/lap-cold-lap.jpg", import.meta.url));

let beadId = "";
let personId = "";
let sha256 = "";

/** What a version before keys were kept froze: its text names no key. */
function signedText(inspectionId: string): string {
  const bead = beadOf(1);
  const photos = bead.photos.map((photo) => ({ ...photo, sha256 }));
  const record = recordOf({ beads: [{ ...bead, id: beadId, photos }] });
  return sealRecord({ ...record, inspection: { id: inspectionId, number: 1 } }, null, {
    revision: 1,
    signedAt: "2026-11-25T10:00:00.000Z",
    signer: { personId, mark: "I-03", nameHash: "0".repeat(64) },
    acknowledgement: "",
    reason: null,
    previousDigest: null,
  }).text;
}

async function fill(): Promise<void> {
  const { pen, folder } = fresh();
  const person = await addPerson(pen, { name: "Marit Oddny", mark: "W-07", role: "welder" });
  const made = await createBead(pen, {
    title: "Lap",
    welder: "Marit Oddny",
    ...(person.ok ? { welderId: person.value.id } : {}),
  });
  const stored = await receivePhoto(folder, createReadStream(picture), { declaredBytes: null });
  if (!person.ok || !made.ok || !stored.ok) throw new Error("the record could not be filled");
  personId = person.value.id;
  beadId = made.value.id;
  ({ sha256 } = stored.value);
  const { format, bytes, widthPx, heightPx } = stored.value;
  await addPhoto(pen, beadId, { sha256, format, bytes, widthPx, heightPx }, "face");
  await saveBead(pen, beadId, 1, { ...emptyBeadContent, title: "Lap, chipped", welder: "Marit Oddny" });
  await writing(pen, async (tx, log) => {
    const job = await tx.job.create({ data: { id: newId(), number: 1, content: {} } });
    const inspection = await tx.inspection.create({
      data: { id: newId(), number: 1, jobId: job.id, draft: {} },
    });
    const content = signedText(inspection.id);
    const signed = await tx.signedRevision.create({
      data: {
        id: newId(),
        inspectionId: inspection.id,
        revision: 1,
        content,
        digest: sha256Text(content),
        signedById: personId,
        signedAt: "2026-11-25T10:00:00.000Z",
      },
    });
    await log(`job:${job.id}`, "job.made");
    await log(`inspection:${inspection.id}`, "inspection.made");
    await log(`signed:${signed.id}`, "record.signed");
    return ok(null);
  });
}

/** Changes the file behind the program's back, the way somebody with an editor for SQLite would. */
function tamper(sql: string, withoutTrigger?: string): void {
  const file = new Database(path.join(fresh().folder, "toeline.db"));
  try {
    if (withoutTrigger) file.exec(`DROP TRIGGER "${withoutTrigger}"`);
    file.exec(sql);
  } finally {
    file.close();
  }
}

const codes = async (): Promise<readonly string[]> => {
  const { db, folder } = fresh();
  return (await verifyRecords(db, folder)).findings.map(({ code }) => code);
};

/** Copies the whole database, does the damage, looks, and puts the copy back. */
async function afterTampering(damage: () => void): Promise<readonly string[]> {
  const { db } = fresh();
  const file = path.join(fresh().folder, "toeline.db");
  await db.$disconnect();
  const kept = readFileSync(file);
  try {
    damage();
    return await codes();
  } finally {
    await db.$disconnect();
    for (const end of ["-wal", "-shm"]) rmSync(`${file}${end}`, { force: true });
    writeFileSync(file, kept);
  }
}

beforeAll(fill);

describe("the verifier", () => {
  it("finds nothing on what the program wrote, and has looked at all of it", async () => {
    const { db, folder } = fresh();
    const found = await verifyRecords(db, folder);
    expect(found.findings).toEqual([]);
    expect(found).toMatchObject({ entries: 7, photos: 1, frozen: 1 });
    expect(found.subjects).toBe((await allSubjects(db)).length);
  });

  it("takes what was signed before keys were kept for that, and for no more", async () => {
    const { db } = fresh();
    const { inspectionId } = await db.signedRevision.findFirstOrThrow();
    const standing = async () => (await listSigned(db, inspectionId))[0]?.standing;
    expect(await standing()).toEqual({ kind: "before-keys" });
    expect(standingSentence({ kind: "before-keys" })).toContain("Signed before keys were kept: digest only.");
  });

  it.each<[string, string, string | undefined, readonly string[]]>([
    [
      "who did it, in an entry",
      `UPDATE LogEntry SET by = 'somebody' WHERE seq = 3`,
      "LogEntry_no_update",
      ["entry-changed"],
    ],
    [
      "one character of an entry's hash",
      `UPDATE LogEntry SET hash = substr(hash, 1, 63) || CASE substr(hash, 64) WHEN '0' THEN '1' ELSE '0' END WHERE seq = 3`,
      "LogEntry_no_update",
      ["entry-changed", "entry-does-not-follow"],
    ],
    [
      "an entry taken out",
      `DELETE FROM LogEntry WHERE seq = 3`,
      "LogEntry_no_delete",
      ["entry-missing", "entry-does-not-follow"],
    ],
    [
      "the end of the log cut off",
      `DELETE FROM LogEntry WHERE seq >= 5`,
      "LogEntry_no_delete",
      ["state-unlogged", "state-unlogged", "state-unlogged"],
    ],
    [
      "a signed record's text",
      `UPDATE SignedRevision SET content = replace(content, 'accept', 'reject')`,
      "SignedRevision_no_update",
      ["state-changed", "text-changed"],
    ],
    [
      "a signed record's text and its digest",
      `UPDATE SignedRevision SET digest = '${sha256Text("x")}', content = 'x'`,
      "SignedRevision_no_update",
      ["state-changed"],
    ],
    [
      "a signed record taken out",
      `DELETE FROM SignedRevision`,
      "SignedRevision_no_delete",
      ["state-missing"],
    ],
    ["a bead's title", `UPDATE Bead SET title = 'Lap, sound'`, undefined, ["state-changed"]],
    [
      "a photo row pointed at another picture",
      `UPDATE Photo SET sha256 = '${"a".repeat(64)}'`,
      undefined,
      ["state-changed", "photo-missing"],
    ],
    ["a person's role", `UPDATE Person SET role = 'inspector'`, undefined, ["state-changed"]],
    [
      "a bead put in",
      `INSERT INTO Bead (id, number, title, updatedAt, setup, judgement) VALUES ('x', 9, 't', 0, '{}', '{}')`,
      undefined,
      ["state-unlogged"],
    ],
  ])("finds %s", async (_, sql, trigger, expected) => {
    const found = await afterTampering(() => tamper(sql, trigger));
    for (const code of expected) expect(found).toContain(code);
    expect(await codes()).toEqual([]);
  });

  it("finds one changed byte in an original photo, and a photo that is gone", async () => {
    const file = originalPath(fresh().folder, sha256)!;
    const bytes = readFileSync(file);
    chmodSync(file, 0o644);
    const changed = Buffer.from(bytes);
    changed[changed.length >> 1]! ^= 1;
    writeFileSync(file, changed);
    expect(await codes()).toEqual(["photo-changed"]);
    rmSync(file);
    expect(await codes()).toEqual(["photo-missing"]);
    writeFileSync(file, bytes);
    expect(await codes()).toEqual([]);
  });

  it("is not needed where the database itself refuses", () => {
    expect(() => tamper(`UPDATE LogEntry SET by = 'x'`)).toThrow("append-only");
    expect(() => tamper(`DELETE FROM LogEntry`)).toThrow("append-only");
    expect(() => tamper(`UPDATE SignedRevision SET content = 'x'`)).toThrow("not changed");
    expect(() => tamper(`DELETE FROM SignedRevision`)).toThrow("not deleted");
  });
});

describe("removing a person", () => {
  it("leaves no name anywhere in the database, and the records sound", async () => {
    const { db, pen, folder } = fresh();
    await saveSetup(pen, "Mine", RunSetupSchema.parse({ volts: 18 }), personId);
    for (let i = 0; i < 12; i += 1)
      await createBead(pen, { title: `Lap ${i}`, welder: "Marit Oddny", welderId: personId });
    expect(filesWith(folder, "Oddny")).toEqual(["toeline.db"]);
    expect((await removePerson(pen, personId, new Date())).ok).toBe(true);
    expect(await listSavedSetups(db, personId)).toEqual([]);
    expect(await getPerson(db, personId)).toMatchObject({ name: null, mark: "W-07" });
    expect(filesWith(folder, "Oddny")).toEqual([]);
    expect(await codes()).toEqual([]);
    expect((await removePerson(pen, personId, new Date())).ok).toBe(false);
  });
});

describe("deleting a bead", () => {
  it("is refused where a signed record speaks of it, and logged where not", async () => {
    const { pen } = fresh();
    expect(await deleteBead(pen, beadId, new Date())).toMatchObject({
      ok: false,
      issues: [{ code: "bead-signed" }],
    });
    const free = await createBead(pen, { title: "free" });
    expect(free.ok && (await deleteBead(pen, free.value.id, new Date())).ok).toBe(true);
    expect(await codes()).toEqual([]);
  });
});
