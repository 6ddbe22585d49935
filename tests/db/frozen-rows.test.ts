import { beforeAll, describe, expect, it } from "vitest";
import { replyToFeedback } from "@/lib/classroom";
import { removePerson } from "@/lib/roster";
import { verifyRecords } from "@/lib/verify";
import { useFreshDb } from "../setup/fresh-db";
import { postgresToTest } from "../setup/postgres-database";
import { fillWholeRecord, type WholeRecord } from "../setup/whole-record";

const fresh = useFreshDb();
let whole: WholeRecord;
beforeAll(async () => {
  whole = await fillWholeRecord(fresh());
});

const run = (sql: string) => fresh().db.$executeRawUnsafe(sql);
/** A way around the triggers that ask of one row; each database has another. */
const copyOver = (table: string) =>
  postgresToTest()
    ? `TRUNCATE "${table}" CASCADE`
    : `INSERT OR REPLACE INTO "${table}" SELECT * FROM "${table}"`;

describe("the database itself refuses", () => {
  it.each([
    ["a log entry changed", `UPDATE "LogEntry" SET "by" = 'x'`, /append-only/],
    ["a log entry deleted", `DELETE FROM "LogEntry"`, /append-only/],
    ["the log replaced", copyOver("LogEntry"), /append-only/],
    ["a signed record changed", `UPDATE "SignedRevision" SET content = 'x'`, /not changed/],
    ["a signed record's reason changed", `UPDATE "SignedRevision" SET reason = 'x'`, /not changed/],
    ["a signed record deleted", `DELETE FROM "SignedRevision"`, /not deleted/],
    ["signed records replaced", copyOver("SignedRevision"), /not (changed|deleted)/],
    ["a signed record's inspection deleted", `DELETE FROM "Inspection"`, /constraint/i],
    ["returned feedback's text changed", `UPDATE "Feedback" SET returned = '{}'`, /not changed/],
    ["returned feedback opened again", `UPDATE "Feedback" SET returned = NULL`, /not changed/],
    ["its draft changed", `UPDATE "Feedback" SET draft = '{}'`, /not changed/],
    ["its author changed", `UPDATE "Feedback" SET "authorId" = 'x'`, /not changed/],
    ["its revision changed", `UPDATE "Feedback" SET revision = 9`, /not changed/],
    ["its day changed", `UPDATE "Feedback" SET "returnedAt" = CURRENT_TIMESTAMP`, /not changed/],
    ["it moved to another hand-in", `UPDATE "Feedback" SET "handInId" = 'x'`, /not changed/],
    ["returned feedback deleted", `DELETE FROM "Feedback"`, /not deleted/],
    ["returned feedback replaced", copyOver("Feedback"), /not (changed|deleted)/],
    ["it deleted with its hand-in", `DELETE FROM "HandIn"`, /not deleted/],
    ["it deleted with its exercise", `DELETE FROM "Exercise"`, /not deleted/],
    ["it deleted with its group", `DELETE FROM "Group"`, /not deleted/],
    ["it deleted with its bead", `DELETE FROM "Bead"`, /not deleted/],
    ["a version of criteria changed", `UPDATE "ShopCriteria" SET content = '{}'`, /not changed/],
    ["a version of criteria deleted", `DELETE FROM "ShopCriteria"`, /not deleted/],
    ["a version of criteria replaced", copyOver("ShopCriteria"), /not (changed|deleted)/],
  ])("%s", async (_, sql, refusal) => {
    await expect(run(sql)).rejects.toThrow(refusal);
    expect((await verifyRecords(fresh().db, fresh().folder)).findings).toEqual([]);
  });

  it("but not a new reply, nor taking a person and their words away", async () => {
    const { pen, db, folder } = fresh();
    expect((await replyToFeedback(pen, whole.handInId, "Done.", new Date())).ok).toBe(true);
    expect((await removePerson(pen, whole.studentId, new Date())).ok).toBe(true);
    expect((await removePerson(pen, whole.inspectorId, new Date())).ok).toBe(true);
    const row = await db.feedback.findUniqueOrThrow({ where: { handInId: whole.handInId } });
    expect(row).toMatchObject({ reply: null, authorId: whole.inspectorId });
    expect(row.returned).not.toBeNull();
    expect((await verifyRecords(db, folder)).findings).toEqual([]);
  });
});
