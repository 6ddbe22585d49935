import { beforeAll, describe, expect, it } from "vitest";
import { createBead } from "@/lib/beads";
import { JobContentSchema, ranBySigner } from "@/lib/inspect";
import {
  createInspection,
  createJob,
  draftRecord,
  listSigned,
  attachBead,
  saveInspection,
  seenDigest,
  signInspection,
} from "@/lib/jobs";
import { holds, roleColumns, rolesWith, type HeldRoles } from "@/lib/people";
import { addPerson } from "@/lib/roster";
import { useFreshDb } from "../../setup/fresh-db";
import { keyOf, PASSPHRASE } from "../../setup/whole-record";
import { everySet } from "../people/every-set";
import type { Pen } from "@/lib/store";

const fresh = useFreshDb();
let pen: Pen;
let signerId = "";
let inspectionId = "";

function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

beforeAll(async () => {
  ({ pen } = fresh());
  const held = rolesWith("welder", ["inspector"]);
  signerId = value(await addPerson(pen, { name: "Vesna Ling", mark: "W-07", ...held })).id;
  await keyOf(pen, signerId);
  const other = value(await addPerson(pen, { name: "Marit Oddny", mark: "W-08", role: "welder" })).id;
  const content = JobContentSchema.parse({
    title: "Frame",
    welds: [
      { id: "a", number: "1", welderId: signerId },
      { id: "b", number: "2", welderId: other },
      { id: "c", number: "3", welderMark: "w - 07" },
      { id: "d", number: "4" },
    ],
  });
  const jobId = value(await createJob(pen, content)).id;
  for (const [welderId, weldId] of [
    [signerId, "d"],
    [other, "b"],
  ] as const) {
    const bead = value(await createBead(pen, { title: weldId, welderId })).id;
    value(await attachBead(pen, bead, { jobId, weldId }));
  }
  inspectionId = value(await createInspection(pen, jobId)).id;
  const welds = content.welds.map(({ id }) => ({ weldId: id, seen: { kind: "percent", percent: 100 } }));
  value(await saveInspection(pen, inspectionId, 1, { examinedOn: "2026-11-25", welds }));
});

const sign = async () => {
  const record = await draftRecord(pen.db, inspectionId);
  return signInspection(pen, {
    ...{ inspectionId, signerId, passphrase: PASSPHRASE, acknowledgement: "Open points seen.", reason: "" },
    ...{ seen: seenDigest(record!), now: new Date("2026-11-25T10:00:00Z") },
  });
};

describe("who signs", () => {
  it("holds the role of an inspector at that moment, leading or not: no other set of roles signs", async () => {
    // Behind the program's back, which would end the key: the role alone refuses.
    const become = (held: HeldRoles) =>
      pen.db.person.update({ where: { id: signerId }, data: roleColumns(held) });
    for (const held of everySet.filter((one) => !holds(one, "inspector"))) {
      await become(held);
      expect(await sign()).toMatchObject({ issues: [{ code: "sign-not-inspector" }] });
    }
    await become(rolesWith("welder", ["inspector"]));
    value(await sign());
  });

  it("stands on the record as the welder of what they ran: by the job's person, its mark, or a bead of theirs", async () => {
    const [{ record } = { record: null }] = await listSigned(pen.db, inspectionId);
    expect(record?.signature?.ranWelds).toEqual(["a", "c", "d"]);
    expect(ranBySigner(record!, record!.signature!)).toBe(
      "Inspected by the welder: whoever signed ran welds 1, 3, 4.",
    );
  });
});
