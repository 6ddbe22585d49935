import { beforeAll, describe, expect, it } from "vitest";
import { emptyBeadJudgement } from "@/lib/assess";
import { passphraseFits } from "@/lib/account";
import { JobContentSchema, type InspectionDraft } from "@/lib/inspect";
import { createBead } from "@/lib/beads";
import {
  addInstrument,
  attachBead,
  correctInspection,
  createInspection,
  createJob,
  draftRecord,
  getInspection,
  getJob,
  listSigned,
  saveInspection,
  saveJob,
  seenDigest,
  signInspection,
} from "@/lib/jobs";
import { addPerson, removePerson, type PersonRecord } from "@/lib/roster";
import type { Pen } from "@/lib/store";
import { allSubjects } from "@/lib/store/subjects";
import { checkFrozen } from "@/lib/verify/signatures";
import { findingsOf } from "../../setup/findings-of";
import {} from "@/lib/beads/beads";
import { deleteBead } from "@/lib/beads/deleted-beads";
import { stateDigest } from "@/lib/store/log";
import { openAccountOf } from "../../setup/account";
import { serveFrom, useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();
let pen: Pen;
let inspector: PersonRecord;
let owner: PersonRecord;
let jobId: string;
let beadId: string;
let inspectionId: string;
const PASSPHRASE = "eleven copper kettles";

type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: readonly { code: string }[] };
function value<T>(result: Outcome<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const codes = (result: Outcome<unknown>) => (result.ok ? [] : result.issues.map(({ code }) => code));

async function sign(over: Partial<Parameters<typeof signInspection>[1]> = {}) {
  const record = await draftRecord(pen.db, inspectionId);
  if (!record) throw new Error("no draft");
  return signInspection(pen, {
    inspectionId,
    signerId: inspector.id,
    passphrase: PASSPHRASE,
    seen: seenDigest(record),
    acknowledgement: "Seen; the open clauses stay open.",
    reason: "",
    now: new Date("2026-11-25T12:00:00Z"),
    ...over,
  });
}

async function save(change: Partial<InspectionDraft>) {
  const now = await getInspection(pen.db, inspectionId);
  if (!now) throw new Error("gone");
  return saveInspection(pen, inspectionId, now.revision, { ...now.draft, ...change });
}

/** Every subject's newest log entry holds the digest of what is there now. */
async function logCoversEverything() {
  for (const subject of await allSubjects(pen.db)) {
    const last = await pen.db.logEntry.findFirst({ where: { subject }, orderBy: { seq: "desc" } });
    expect(last?.digest, subject).toBe(await stateDigest(pen.db, subject));
  }
}

beforeAll(async () => {
  // The accounts library keeps its key in the data folder.
  serveFrom(fresh().folder);
  pen = fresh().pen;
  inspector = value(await addPerson(pen, { name: "Vesna Harcourt-Ling", mark: "I-03", role: "inspector" }));
  owner = value(await addPerson(pen, { name: "Odo Marsh", mark: null, role: "owner" }));
  for (const [person, signInName] of [
    [inspector, "vesna"],
    [owner, "odo"],
  ] as const)
    await openAccountOf(pen, person.id, signInName, PASSPHRASE);
  const welder = value(await addPerson(pen, { name: "Idris Quenby", mark: "W-07", role: "welder" }));
  const content = JobContentSchema.parse({
    title: "Bracket run 4",
    maker: "Harrow Basin Training Bay",
    procedure: "WPS-12",
    process: "FCAW-S",
    criteriaId: "iso-5817-c",
    parts: [{ id: "p1", name: "Bracket", drawing: "D-100", material: "S235", thicknessMm: 10 }],
    welds: [
      {
        id: "w1",
        number: "W1",
        partId: "p1",
        joint: "tee",
        position: "horizontal",
        welderId: welder.id,
      },
    ],
  });
  jobId = value(await createJob(pen, content)).id;
  const judgement = { ...emptyBeadJudgement, criteriaId: "iso-5817-c" };
  beadId = value(await createBead(pen, { title: "Leg", welder: "Idris Quenby", judgement })).id;
  value(await attachBead(pen, beadId, { jobId, weldId: "w1" }));
  inspectionId = value(await createInspection(pen, jobId)).id;
  const gauge = value(
    await addInstrument(pen, { kind: "fillet-gauge", name: "Gauge 2", serial: "F-2", dueOn: "2026-10-01" }),
  );
  value(
    await save({
      examinedOn: "2026-11-25",
      look: "direct",
      lightLux: 520,
      distanceMm: 400,
      angleDeg: 60,
      surface: "brushed",
      instrumentIds: [gauge.id],
    }),
  );
});

describe("a record before it is signed", () => {
  it("says that an instrument was overdue on the day, and that the bead's clauses are open", async () => {
    const record = await draftRecord(pen.db, inspectionId);
    const found = record?.points.map(({ code }) => code);
    expect(found).toContain("instrument-overdue");
    expect(found).toContain("bead-open");
    expect(record?.result).toBe("open");
    expect(record?.welderMarks).toEqual({ w1: "W-07" });
  });

  it("keeps a weld that carries a bead", async () => {
    const job = await getJob(pen.db, jobId);
    expect(codes(await saveJob(pen, jobId, 1, { ...job?.content, welds: [] }))).toEqual(["weld-has-beads"]);
    expect(codes(await attachBead(pen, beadId, { jobId, weldId: "nowhere" }))).toEqual(["weld-gone"]);
  });

  it("knows a passphrase from a wrong one", async () => {
    expect(await passphraseFits(pen.db, await userOf(inspector.id), "something else entirely")).toBe(false);
    expect(await passphraseFits(pen.db, await userOf(inspector.id), PASSPHRASE)).toBe(true);
  });

  it.each([
    ["an owner", () => ({ signerId: owner.id }), "sign-not-inspector"],
    ["silence on open points", () => ({ acknowledgement: " " }), "sign-points-unanswered"],
    ["another record than was seen", () => ({ seen: "0".repeat(64) }), "sign-not-what-was-seen"],
  ])("is not signed by %s", async (_, over, code) => {
    expect(codes(await sign(over()))).toEqual([code]);
    expect(await listSigned(pen.db, inspectionId)).toEqual([]);
  });
});

const userOf = async (id: string) => (await pen.db.person.findUniqueOrThrow({ where: { id } })).userId ?? "";

describe("a signed record", () => {
  it("is frozen, holds marks and digests but no name, and is in the log", async () => {
    expect(value(await sign()).revision).toBe(1);
    const row = await pen.db.signedRevision.findFirstOrThrow({ where: { inspectionId } });
    for (const name of ["Vesna", "Harcourt", "Idris", "Quenby"]) expect(row.content).not.toContain(name);
    expect(row.content).toContain("W-07");
    const [one] = await listSigned(pen.db, inspectionId);
    expect(one?.intact).toBe(true);
    expect(one?.signer).toBe("Vesna Harcourt-Ling");
    expect(one?.standing.kind).toBe("signed-here");
    const entry = await pen.db.logEntry.findFirst({ where: { action: "record.signed" } });
    expect(entry?.subject).toBe(`signed:${row.id}`);
    await logCoversEverything();
  });

  it("takes no further change, is not signed twice, and keeps its bead", async () => {
    expect(codes(await save({ lightLux: 10 }))).toEqual(["inspection-signed"]);
    expect(codes(await sign())).toEqual(["inspection-signed"]);
    expect(codes(await deleteBead(pen, beadId, new Date()))).toEqual(["bead-signed"]);
  });

  it("is neither changed nor deleted by the database itself", async () => {
    const where = { inspectionId_revision: { inspectionId, revision: 1 } };
    await expect(pen.db.signedRevision.update({ where, data: { content: "{}" } })).rejects.toThrow();
    await expect(pen.db.signedRevision.delete({ where })).rejects.toThrow();
    expect(await findingsOf(checkFrozen(pen.db, null))).toEqual([]);
  });

  it("is corrected by a revision that says what changed and why, beside the old one", async () => {
    value(await correctInspection(pen, inspectionId));
    value(await save({ lightLux: 610 }));
    expect(codes(await sign())).toEqual(["sign-reason-missing"]);
    value(await sign({ reason: "The light meter was read again." }));
    const [first, second] = await listSigned(pen.db, inspectionId);
    expect(first?.record?.draft.lightLux).toBe(520);
    const signature = second?.record?.signature;
    expect(signature?.changes).toEqual(["Viewing conditions › Light at the surface: was 520 lx, now 610 lx"]);
    expect(signature?.reason).toBe("The light meter was read again.");
    expect(signature?.previousDigest).toBe(first?.digest);
    await logCoversEverything();
  });

  it("stays sound when its signer is removed", async () => {
    value(await removePerson(pen, inspector.id, new Date("2026-11-26T08:00:00Z")));
    const [first] = await listSigned(pen.db, inspectionId);
    expect(first?.intact).toBe(true);
    expect(first?.signer).toBeNull();
    expect(first?.standing.kind).toBe("signed-here");
    expect(await findingsOf(checkFrozen(pen.db, null))).toEqual([]);
  });

  it("is found when a byte of it was changed behind the triggers", async () => {
    const triggers = await pen.db.$queryRawUnsafe<{ name: string }[]>(
      "SELECT name FROM sqlite_master WHERE type = 'trigger' AND tbl_name = 'SignedRevision'",
    );
    expect(triggers.length).toBeGreaterThan(0);
    for (const { name } of triggers) await pen.db.$executeRawUnsafe(`DROP TRIGGER "${name}"`);
    await pen.db.$executeRawUnsafe(
      "UPDATE SignedRevision SET content = replace(content, '520', '529') WHERE revision = 1",
    );
    const found = await findingsOf(checkFrozen(pen.db, null));
    expect(found.map(({ code }) => code)).toEqual(["text-changed", "signature-bad"]);
    expect((await listSigned(pen.db, inspectionId))[0]?.intact).toBe(false);
  });
});
