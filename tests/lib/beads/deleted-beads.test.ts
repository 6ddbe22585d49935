import { createReadStream } from "node:fs";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { emptyBeadContent } from "@/lib/assess";
import { addPhoto, attachPhoto, createBead, getBead, saveBead } from "@/lib/beads";
import { engineOf } from "@/lib/db";
import {
  deleteBead,
  deletedBeadThing,
  deletionRefusal,
  eraseDeletedBeads,
  listDeletedBeads,
  restoreBead,
} from "@/lib/beads/deleted-beads";
import { attachBead, createJob, saveJob } from "@/lib/jobs";
import { JobContentSchema } from "@/lib/inspect";
import { verifyOriginal } from "@/lib/photo";
import { addPerson, placesOfName, removePerson } from "@/lib/roster";
import { stateDigest } from "@/lib/store";
import { verifyRecords } from "@/lib/verify";
import { filesWith } from "../../setup/files-with";
import { useFreshDb } from "../../setup/fresh-db";
import { fillWholeRecord } from "../../setup/whole-record";
import { inDepth } from "../../setup/in-depth";

const picture = fileURLToPath(new URL("../../../demo-images/set/lap-cold-lap.jpg", import.meta.url));
const fresh = useFreshDb();
const later = (days: number) => new Date(Date.parse("2026-11-26T08:00:00Z") + days * 86_400_000);

function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const codes = (result: { ok: boolean; issues?: readonly { code: string }[] }) =>
  result.issues?.map(({ code }) => code);

/** A bead with marks, a photo in the store, and a bead that was run after it. */
async function beadWithPhoto(start: Parameters<typeof createBead>[1] = {}) {
  const { pen, folder } = fresh();
  const bead = value(await createBead(pen, start));
  const arriving = { dataDir: folder, source: createReadStream(picture), declaredBytes: null };
  const taken = await attachPhoto(pen.db, arriving, (photo) => addPhoto(pen, bead.id, photo, "face"));
  if (!taken.ok) throw new Error("no photo");
  const { id, sha256 } = taken.value.record;
  const drawing = (await getBead(pen.db, bead.id))!.content.photos[0]!.drawing;
  const weldLine = [
    { x: 10, y: 20 },
    { x: 300, y: 22 },
  ];
  value(
    await saveBead(pen, bead.id, 1, {
      ...emptyBeadContent,
      title: "Lap, chipped",
      photos: [{ id, role: "back", drawing: { ...drawing, weldLine } }],
    }),
  );
  const next = value(await createBead(pen, { previousId: bead.id }));
  return { id: bead.id, number: bead.number, sha256, nextId: next.id };
}
const findings = async () => {
  const { db, folder } = fresh();
  return (await verifyRecords(db, folder)).findings;
};

describe("a deleted bead", () => {
  it("is gone from the list, kept among the deleted ones, and the log verifies at every step", async () => {
    const { pen } = fresh();
    const bead = await beadWithPhoto();
    const state = await stateDigest(pen.db, `bead:${bead.id}`);
    const { deletedId } = value(await deleteBead(pen, bead.id, later(0)));
    expect(await getBead(pen.db, bead.id)).toBeNull();
    expect((await getBead(pen.db, bead.nextId))?.previous).toBeNull();
    expect(await listDeletedBeads(pen.db, {}, later(1))).toMatchObject([
      { id: deletedId, number: bead.number, title: "Lap, chipped", restorableUntil: later(30).toISOString() },
    ]);
    expect(await findings()).toEqual([]);
    expect(value(await restoreBead(pen, deletedId, later(29)))).toEqual({
      beadId: bead.id,
      number: bead.number,
    });
    // To the last column what the log sealed before: no digest was made anew for it.
    expect(await stateDigest(pen.db, `bead:${bead.id}`)).toBe(state);
    expect((await getBead(pen.db, bead.nextId))?.previous?.id).toBe(bead.id);
    expect(await listDeletedBeads(pen.db, {}, later(29))).toEqual([]);
    expect(codes(await restoreBead(pen, deletedId, later(29)))).toEqual(["bead-not-deleted"]);
    expect(await findings()).toEqual([]);
  });

  it("keeps its number for good", async () => {
    const { pen } = fresh();
    const last = value(await createBead(pen));
    const { deletedId } = value(await deleteBead(pen, last.id, later(0)));
    expect(value(await createBead(pen)).number).toBe(last.number + 1);
    await eraseDeletedBeads(pen, fresh().folder, later(31));
    expect(value(await createBead(pen)).number).toBe(last.number + 2);
    expect(codes(await restoreBead(pen, deletedId, later(31)))).toEqual(["bead-erased"]);
    expect(codes(await createBead(pen, { id: last.id }))).toEqual(["bead-there-already"]);
  });

  it("is found by the verifier when somebody changed it while it lay there", async () => {
    const { pen, db } = fresh();
    const bead = await beadWithPhoto();
    const { deletedId } = value(await deleteBead(pen, bead.id, later(0)));
    const { content } = await db.deletedBead.findUniqueOrThrow({ where: { id: deletedId } });
    const changed = content!.replace("Lap, chipped", "Lap, perfect");
    await db.deletedBead.update({ where: { id: deletedId }, data: { content: changed } });
    expect((await findings()).map(({ code, path }) => [code, path[0]])).toEqual([
      ["state-changed", `deleted-bead:${deletedId}`],
    ]);
    await db.deletedBead.update({ where: { id: deletedId }, data: { content } });
    expect(await findings()).toEqual([]);
  });

  it("keeps its photos as long as it can come back, and not longer", async () => {
    const { pen, db, folder } = fresh();
    // The photo lies on beads of the tests before: only the last of them lets it go.
    const bead = await beadWithPhoto();
    for (const { beadId } of await db.photo.findMany({ where: { sha256: bead.sha256 } }))
      value(await deleteBead(pen, beadId, later(2)));
    const isThere = async () => (await verifyOriginal(folder, bead.sha256)).ok;
    await eraseDeletedBeads(pen, folder, later(31.9));
    expect(await isThere()).toBe(true);
    expect(await findings()).toEqual([]);
    expect(await eraseDeletedBeads(pen, folder, later(32.1))).toBeGreaterThan(0);
    expect(await isThere()).toBe(false);
    expect(await findings()).toEqual([]);
    const again = await beadWithPhoto();
    expect(again.sha256).toBe(bead.sha256);
  });

  it("leaves no byte of its words in the folder once it is erased", async () => {
    const { pen, db, folder } = fresh();
    const bead = value(await createBead(pen, { title: "Quondam bracket" }));
    value(await saveBead(pen, bead.id, 1, { ...emptyBeadContent, title: "Quondam bracket, chipped" }));
    value(await deleteBead(pen, bead.id, later(33)));
    const holds = () => filesWith(folder, "Quondam");
    // What PostgreSQL keeps in its own files cannot be looked into from here.
    expect(holds()).toEqual(engineOf(db) === "sqlite" ? ["toeline.db"] : []);
    expect(await eraseDeletedBeads(pen, folder, later(64))).toBeGreaterThan(0);
    expect(holds()).toEqual([]);
    expect(await db.deletedBead.count({ where: { beadId: bead.id, number: bead.number } })).toBe(1);
    expect(await findings()).toEqual([]);
  });

  it("says nobody's name once that person is removed", async () => {
    const { pen, db } = fresh();
    const person = value(await addPerson(pen, { name: "Yrsa Fjeldmo", mark: "W-44", role: "welder" }));
    const bead = value(await createBead(pen, { welder: "Yrsa Fjeldmo", welderId: person.id }));
    const { deletedId } = value(await deleteBead(pen, bead.id, later(40)));
    expect(await deletedBeadThing(db, deletedId)).toEqual({ personId: person.id, beadId: bead.id });
    expect(await placesOfName(db, person.id)).toEqual([]);
    value(await removePerson(pen, person.id, later(41)));
    const rows = JSON.stringify(await db.deletedBead.findMany());
    expect(rows).not.toContain("Yrsa");
    expect(await findings()).toEqual([]);
    value(await restoreBead(pen, deletedId, later(42)));
    expect((await getBead(db, bead.id))?.content.welder).toBeNull();
    expect(await findings()).toEqual([]);
  });

  it("comes back without the weld that was struck off meanwhile", async () => {
    const { pen, db } = fresh();
    const job = JobContentSchema.parse({ title: "Bracket", welds: [{ id: "w1", number: "W1" }] });
    const made = value(await createJob(pen, job));
    const bead = value(await createBead(pen));
    value(await attachBead(pen, bead.id, { jobId: made.id, weldId: "w1" }));
    const { deletedId } = value(await deleteBead(pen, bead.id, later(40)));
    value(await saveJob(pen, made.id, 1, { ...job, welds: [] }));
    value(await restoreBead(pen, deletedId, later(41)));
    expect(await getBead(db, bead.id)).toMatchObject({ jobId: null, weldId: null });
    expect(await findings()).toEqual([]);
  });
});

describe("a bead that a record speaks of", () => {
  it("stays, and the reason is said before anybody asks twice", async () => {
    const { pen, db } = fresh();
    const { beadId } = await fillWholeRecord(fresh());
    expect(await deletionRefusal(db, beadId)).toMatchObject({ code: "bead-handed-in" });
    expect(codes(await deleteBead(pen, beadId, later(0)))).toEqual(["bead-handed-in"]);
    expect(await deletionRefusal(db, "none")).toMatchObject({ code: "bead-gone" });
  });
});

describe("in any order", () => {
  it("deleting, restoring and erasing leave a log that verifies, and a restored bead as it was", async () => {
    const { pen, db, folder } = fresh();
    const act = fc.record({ does: fc.constantFrom("make", "delete", "restore", "erase"), at: fc.nat(7) });
    await fc.assert(
      fc.asyncProperty(fc.array(act, { maxLength: 12 }), async (acts) => {
        const made: string[] = [];
        const states = new Map<string, string | null>();
        let day = 100;
        for (const { does, at } of acts) {
          day += does === "erase" ? 40 : 1;
          const now = later(day);
          const id = made[at % Math.max(1, made.length)];
          if (does === "make") made.push(value(await createBead(pen, { title: `Bead of ${at}` })).id);
          if (does === "erase") await eraseDeletedBeads(pen, folder, now);
          if (does === "delete" && id) {
            states.set(id, (await stateDigest(db, `bead:${id}`)) ?? states.get(id) ?? null);
            await deleteBead(pen, id, now);
          }
          const deleted = (await listDeletedBeads(db, {}, now))[at];
          if (does !== "restore" || !deleted) continue;
          const { beadId } = value(await restoreBead(pen, deleted.id, now));
          if (states.has(beadId)) expect(await stateDigest(db, `bead:${beadId}`)).toBe(states.get(beadId));
        }
        expect(await findings()).toEqual([]);
      }),
      { seed: 20261126, numRuns: inDepth(4, 12) },
    );
  });
});
