import { beforeAll, describe, expect, it } from "vitest";
import { newsBetween } from "@/lib/classroom";
import { useFreshDb } from "../../setup/fresh-db";
import { fillWholeRecord, type WholeRecord } from "../../setup/whole-record";

const fresh = useFreshDb();
let whole: WholeRecord;
beforeAll(async () => {
  whole = await fillWholeRecord(fresh());
}, 60_000);

const RETURNED = "2026-11-25T09:00:00.000Z";
const span = (after: string, until: string) => ({ after: new Date(after), until: new Date(until) });

describe("what came", () => {
  it("is for a student their own returned feedback, once: after one moment, and up to the next", async () => {
    const { db } = fresh();
    const own = { personId: whole.studentId };
    const before = "2026-11-25T08:59:59.999Z";
    const came = await newsBetween(db, own, span(before, RETURNED));
    expect(came).toEqual([
      { kind: "returned", handInId: whole.handInId, exercise: "Lap on 2 mm", at: RETURNED },
    ]);
    // The next span begins where this one ended.
    expect(await newsBetween(db, own, span(RETURNED, "2026-11-26T00:00:00.000Z"))).toEqual([]);
    expect(await newsBetween(db, own, span("2026-11-25T00:00:00.000Z", before))).toEqual([]);
  });

  it("is nobody else's, and no hand-in is told to a student", async () => {
    const { db } = fresh();
    const ever = span("2020-01-01T00:00:00.000Z", "2100-01-01T00:00:00.000Z");
    expect(await newsBetween(db, { personId: whole.inspectorId }, ever)).toEqual([]);
  });

  it("is for those who answer what was handed in and waits, and names no person", async () => {
    const { db } = fresh();
    const ever = span("2020-01-01T00:00:00.000Z", "2100-01-01T00:00:00.000Z");
    // Answered already, so it waits for nobody.
    expect(await newsBetween(db, "all", ever)).toEqual([]);
    const { db: rows } = fresh();
    const bead = await rows.bead.findFirstOrThrow({ where: { handIn: null } });
    await rows.handIn.create({
      data: {
        id: "late",
        exerciseId: whole.exerciseId,
        beadId: bead.id,
        personId: whole.studentId,
        secretHash: "h",
        handedInAt: new Date("2026-11-27T10:00:00.000Z"),
      },
    });
    const came = await newsBetween(db, "all", ever);
    expect(came.map(({ kind, handInId }) => [kind, handInId])).toEqual([["handed-in", "late"]]);
    expect(JSON.stringify(came)).not.toMatch(/Marit|Oddny|W-07/);
  });
});
