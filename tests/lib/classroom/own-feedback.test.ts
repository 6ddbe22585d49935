import { beforeAll, describe, expect, it } from "vitest";
import { createBead } from "@/lib/beads";
import {
  countWaiting,
  createExercise,
  getFeedback,
  listHandIns,
  returnFeedback,
  saveFeedback,
  waitingFor,
} from "@/lib/classroom";
import { emptyFeedback } from "@/lib/course";
import { addPerson, createGroup } from "@/lib/roster";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();
let exerciseId = "";
let teacher = "";
let other = "";
const said = { ...emptyFeedback, remark: "Nearly there." };
const noon = new Date("2026-11-27T12:00:00.000Z");

function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

/** A bead handed in, by whom it says: the person, the welder of the bead, or nobody known. */
async function handIn(id: string, personId: string | null, welderId: string | null): Promise<void> {
  const { db, pen } = fresh();
  const bead = value(await createBead(pen, { title: id, welderId })).id;
  const row = { id, exerciseId, beadId: bead, personId, secretHash: id };
  await db.handIn.create({ data: { ...row, handedInAt: noon } });
}

beforeAll(async () => {
  const { pen } = fresh();
  const group = value(await createGroup(pen, "Bay 3")).id;
  const exercise = { title: "Lap", content: {}, open: true, withoutAccount: true, dueAt: null };
  exerciseId = value(await createExercise(pen, group, exercise)).id;
  const both = { mark: null, role: "instructor", also: ["welder"] };
  teacher = value(await addPerson(pen, { ...both, name: "Imke Tal" })).id;
  other = value(await addPerson(pen, { ...both, name: "Orla Brandt" })).id;
  await handIn("own", teacher, teacher);
  await handIn("own-bead", null, teacher);
  await handIn("others", other, other);
  await handIn("nameless", null, null);
});

describe("whoever teaches and welds", () => {
  it("finds all but their own among those that wait, and in their count", async () => {
    const { db } = fresh();
    // One whose bead alone is theirs is told by the bead, which the list does not hold.
    const handIns = (await listHandIns(db)).filter(({ id }) => id !== "own-bead");
    const ids = (who: string | null) =>
      waitingFor(handIns, who)
        .map(({ id }) => id)
        .toSorted();
    expect(ids(teacher)).toEqual(["nameless", "others"]);
    expect(ids(other)).toEqual(["nameless", "own"]);
    expect(ids(null)).toEqual(["nameless", "others", "own"]);
    expect(await countWaiting(db, teacher)).toBe(2);
    expect(await countWaiting(db, other)).toBe(3);
    expect(await countWaiting(db)).toBe(4);
  });

  it.each(["own", "own-bead"])("gives no feedback on %s: it is somebody else's to give", async (id) => {
    const { pen, db } = fresh();
    expect(await saveFeedback(pen, id, 0, said, teacher)).toMatchObject({
      issues: [{ code: "feedback-own" }],
    });
    value(await saveFeedback(pen, id, 0, said, other));
    expect(await returnFeedback(pen, id, 1, teacher, noon)).toMatchObject({
      issues: [{ code: "feedback-own" }],
    });
    expect((await getFeedback(db, id)).returned).toBeNull();
    value(await returnFeedback(pen, id, 1, other, noon));
  });

  it.each(["others", "nameless"])("answers %s as any instructor", async (id) => {
    const { pen } = fresh();
    value(await saveFeedback(pen, id, 0, said, teacher));
  });
});
