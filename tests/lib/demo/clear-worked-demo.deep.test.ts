import { describe, expect, it } from "vitest";
import { createBead, getBead, saveBead } from "@/lib/beads";
import { clearDemoShop, demoToClear } from "@/lib/demo";
import { fillDemoShop } from "@/lib/demo/fill-shop";
import { draftRecord, listInspections, listJobs, seenDigest, signInspection } from "@/lib/jobs";
import { addPerson, addStudent, createGroup, listGroups } from "@/lib/roster";
import { writeSetting, type Pen } from "@/lib/store";
import { verifyRecords } from "@/lib/verify";
import { openAccountOf } from "../../setup/account";
import { useFreshDb } from "../../setup/fresh-db";
import { listBeads } from "../../setup/stored-beads";

const fresh = useFreshDb();
const PASSPHRASE = "slag over the toe line";

function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

/** As lib/cli/demo.ts fills it. */
async function fill() {
  const { db, folder } = fresh();
  // Where the key of the accounts lies.
  process.env["TOELINE_DATA"] = folder;
  const system: Pen = { db, by: "system" };
  await fillDemoShop(system, folder);
  await writeSetting(system, "demo.filled", true);
}
async function sign(pen: Pen, inspectionId: string) {
  const inspector = value(await addPerson(pen, { name: "Vesna Ling", mark: "I-03", role: "inspector" }));
  await openAccountOf(pen, inspector.id, "vesna", PASSPHRASE);
  const record = await draftRecord(pen.db, inspectionId);
  value(
    await signInspection(pen, {
      inspectionId,
      signerId: inspector.id,
      passphrase: PASSPHRASE,
      seen: seenDigest(record!),
      acknowledgement: "Open points seen.",
      reason: "",
      now: new Date("2026-11-26T10:00:00Z"),
    }),
  );
}
const guards = () =>
  fresh().db.$queryRawUnsafe<object[]>(
    "SELECT name, sql FROM sqlite_master WHERE type = 'trigger' ORDER BY name",
  );

describe("clearing a demo shop in which somebody worked", () => {
  it("takes what it made and nothing else, and the log verifies", async () => {
    const { db, folder } = fresh();
    await fill();
    const mine: Pen = { db, by: "owner" };
    const own = value(await createBead(mine, { title: "Mine" }));
    const group = value(await createGroup(mine, "Mondays"));
    value(await addStudent(mine, group.id, { name: "Oluf Raske", mark: "W-50" }));
    const worked = (await listBeads(db)).find(
      ({ content }) => content.photos.length > 0 && !content.judgement.tried,
    )!;
    value(await saveBead(mine, worked.id, worked.revision, { ...worked.content, title: "Mine as well" }));
    const job = (await listJobs(db))[0]!;
    const [inspection] = await listInspections(db, { jobId: job.id });
    await sign(mine, inspection!.id);
    const before = await guards();
    const plan = await demoToClear(db);
    const cleared = value(await clearDemoShop(mine, folder));
    expect(cleared).toEqual(plan);
    // The bead worked on stays, with its person; and whatever hangs on it.
    const left = (await listBeads(db)).map(({ id }) => id);
    expect(left).toContain(own.id);
    expect(left).toContain(worked.id);
    expect(cleared.beadsGone).toBeGreaterThan(10);
    expect((await listGroups(db)).map(({ name }) => name)).toContain("Mondays");
    expect(await guards()).toEqual(before);
    const { findings, photos } = await verifyRecords(db, folder);
    expect(findings).toEqual([]);
    expect(photos).toBe(3);
    // What was signed names the job and its two beads: nothing of that goes.
    expect((await listJobs(db)).map(({ id }) => id)).toEqual([job.id]);
    const onJob = (await listBeads(db)).filter(({ jobId }) => jobId === job.id);
    expect(onJob).toHaveLength(2);
    expect(await demoToClear(db)).toBeNull();
    expect(await getBead(db, worked.id)).toMatchObject({ content: { title: "Mine as well" } });
  });
});
