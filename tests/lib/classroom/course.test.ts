import { beforeAll, describe, expect, it } from "vitest";
import { emptyExercise, emptyFeedback, type FeedbackContent } from "@/lib/course";
import type { Db } from "@/lib/db";
import { createBead, getBead } from "@/lib/beads";
import {
  addPhrase,
  createExercise,
  deletePhrase,
  getExercise,
  getFeedback,
  countWaiting,
  getHandIn,
  handInBead,
  handInBySecret,
  handInPhoto,
  listHandIns,
  listPhrases,
  movePhrase,
  replyToFeedback,
  returnFeedback,
  saveExercise,
  saveFeedback,
  setExerciseOpen,
  withdrawHandIn,
  type ExerciseRecord,
} from "@/lib/classroom";
import { addStudent, createGroup, listGroups, removePerson, setAccount } from "@/lib/roster";
import { sha256Text, type Pen } from "@/lib/store";
import { verifyRecords } from "@/lib/verify";
import { allSubjects } from "@/lib/store/subjects";
import {} from "@/lib/beads/beads";
import { deleteBead } from "@/lib/beads/deleted-beads";
import { stateDigest } from "@/lib/store/log";
import type { HandedIn } from "@/lib/classroom/hand-ins";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();
let db: Db;
let pen: Pen;
let groupId: string;
let student: { readonly id: string };
let exercise: ExerciseRecord;

function value<T>(
  result: { readonly ok: true; readonly value: T } | { readonly ok: false; readonly issues: unknown },
): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const codes = (result: { ok: boolean; issues?: readonly { code: string }[] }) =>
  (result.issues ?? []).map(({ code }) => code);

const exerciseInput = {
  title: "Lap on 2 mm",
  content: { ...emptyExercise, aim: "Leg 4 mm, no undercut", joint: "lap", criteriaId: null },
  open: true,
  withoutAccount: true,
  dueAt: null,
};
let photos = 0;
const photo = () => ({
  sha256: sha256Text(`photo ${(photos += 1)}`),
  format: "jpeg",
  bytes: 100,
  widthPx: 800,
  heightPx: 600,
});
const form = (personId: string | null, givenName: string | null = null) => ({
  personId,
  givenName,
  note: "second try",
  run: { wireFeedMPerMin: 5.1, volts: 16.5, ctwdMm: null, polarity: "DCEN" },
});
const anonymous = { by: null, signedInAs: null };

async function handIn(): Promise<HandedIn> {
  return value(await handInPhoto(db, exercise.code, form(student.id), photo(), anonymous));
}

/** Nothing may have changed that the log does not know of: every subject's state against its latest entry. */
async function expectLogCoversEverything(): Promise<void> {
  const latest = new Map<string, string | null>();
  for (const { subject, digest } of await db.logEntry.findMany({ orderBy: { seq: "asc" } }))
    latest.set(subject, digest);
  const subjects = await allSubjects(db);
  for (const subject of subjects) expect(latest.get(subject), subject).toBe(await stateDigest(db, subject));
  for (const [subject, digest] of latest)
    if (digest !== null) expect(subjects, `${subject} is gone unsaid`).toContain(subject);
}

beforeAll(async () => {
  ({ db, pen } = fresh());
  groupId = value(await createGroup(pen, "Bay 3, mornings")).id;
  student = value(await addStudent(pen, groupId, { name: "Imke Tal", mark: "W-07" }));
  const { id } = value(await createExercise(pen, groupId, exerciseInput));
  exercise = (await getExercise(db, id))!;
});

describe("handing in without an account", () => {
  it("makes a bead, its photo and a hand-in, and the log says so in the hand-in's own name", async () => {
    const made = await handIn();
    const bead = (await getBead(db, made.beadId))!;
    expect(bead).toMatchObject({ welderId: student.id, handInId: made.handInId });
    expect(bead.content.title).toBe("Lap on 2 mm");
    expect(bead.content.setup).toMatchObject({ joint: null, volts: 16.5, ctwdMm: null, polarity: "DCEN" });
    expect(bead.photos).toHaveLength(1);
    const entries = await db.logEntry.findMany({ where: { by: `hand-in:${made.handInId}` } });
    expect(entries.map(({ action }) => action)).toEqual(["bead.made", "hand-in.made"]);
    expect(JSON.stringify(entries)).not.toContain("Imke");
    await expectLogCoversEverything();
  });

  it("stores the secret only as its hash, and opens with it alone, whatever code the exercise has by now", async () => {
    const made = await handIn();
    const row = await db.handIn.findUniqueOrThrow({ where: { id: made.handInId } });
    expect(row.secretHash).toBe(sha256Text(made.secret));
    expect(JSON.stringify(row)).not.toContain(made.secret);
    expect((await handInBySecret(db, made.code, made.secret))?.id).toBe(made.handInId);
    // The code on the bench may have been renewed since; it is no secret and opens nothing.
    expect((await handInBySecret(db, "CCCCCC", made.secret))?.id).toBe(made.handInId);
    expect(await handInBySecret(db, made.code, made.secret.slice(1))).toBeNull();
    expect(await handInBySecret(db, made.code, row.secretHash)).toBeNull();
    expect(await handInBySecret(db, made.code, "")).toBeNull();
  });

  it("takes a typed name where somebody is in no list", async () => {
    const made = value(await handInPhoto(db, exercise.code, form(null, "Joss"), photo(), anonymous));
    expect(await getHandIn(db, made.handInId)).toMatchObject({ personId: null, student: "Joss" });
  });

  it("refuses, and leaves nothing behind", async () => {
    const before = [await db.bead.count(), await db.handIn.count(), await db.logEntry.count()];
    const other = value(await createGroup(pen, "Evenings"));
    const stranger = value(await addStudent(pen, other.id, { name: "Oda Brink", mark: null }));
    const logged = await db.logEntry.count();
    const tries: [string, unknown][] = [
      ["hand-in-nameless", form(null)],
      ["person-gone", form(stranger.id)],
      ["hand-in-not-understood", { ...form(student.id), run: { volts: -3 } }],
    ];
    for (const [code, input] of tries)
      expect(codes(await handInPhoto(db, exercise.code, input, photo(), anonymous))).toEqual([code]);
    const wrong = await handInPhoto(db, "NOSUCH", form(student.id), photo(), anonymous);
    expect(codes(wrong)).toEqual(["hand-in-code-unknown"]);
    expect([await db.bead.count(), await db.handIn.count()]).toEqual(before.slice(0, 2));
    expect(await db.logEntry.count()).toBe(logged);
  });

  it("is not under the name of somebody with an account, nor into a group one is not in", async () => {
    const days = value(await createGroup(pen, "Days"));
    const { code } = (await getExercise(db, value(await createExercise(pen, days.id, exerciseInput)).id))!;
    const known = value(await addStudent(pen, days.id, { name: "Runa Vik", mark: null }));
    value(await setAccount(pen, known.id, "account-of-runa"));
    expect(codes(await handInPhoto(db, code, form(known.id), photo(), anonymous))).toEqual([
      "hand-in-needs-account",
    ]);
    const herself = { by: `person:${known.id}`, signedInAs: known.id };
    value(await handInPhoto(db, code, form(null), photo(), herself));
    const elsewhere = value(await createGroup(pen, "Nights"));
    const stranger = value(await addStudent(pen, elsewhere.id, { name: "Sten Lo", mark: null }));
    const himself = { by: `person:${stranger.id}`, signedInAs: stranger.id };
    expect(codes(await handInPhoto(db, code, form(null), photo(), himself))).toEqual(["hand-in-other-group"]);
  });

  it("takes one photo once", async () => {
    const same = photo();
    value(await handInPhoto(db, exercise.code, form(student.id), same, anonymous));
    const again = await handInPhoto(db, exercise.code, form(student.id), same, anonymous);
    expect(codes(again)).toEqual(["hand-in-photo-twice"]);
  });

  it("respects a closed exercise and one for accounts only", async () => {
    value(await setExerciseOpen(pen, exercise.id, false));
    expect(codes(await handInPhoto(db, exercise.code, form(student.id), photo(), anonymous))).toEqual([
      "exercise-closed",
    ]);
    const now = (await getExercise(db, exercise.id))!;
    value(await saveExercise(pen, exercise.id, now.revision, { ...exerciseInput, withoutAccount: false }));
    expect(codes(await handInPhoto(db, exercise.code, form(student.id), photo(), anonymous))).toEqual([
      "hand-in-needs-account",
    ]);
    const signedIn = { by: `person:${student.id}`, signedInAs: student.id };
    const made = await handInPhoto(db, exercise.code, form(null), photo(), signedIn);
    expect((await getHandIn(db, value(made).handInId))?.personId).toBe(student.id);
    value(await saveExercise(pen, exercise.id, now.revision + 1, exerciseInput));
    expect(codes(await saveExercise(pen, exercise.id, now.revision, exerciseInput))).toEqual([
      "exercise-changed-elsewhere",
    ]);
  });
});

describe("handing in a bead that is there", () => {
  it("takes it once, not without a photo, and then it cannot be deleted", async () => {
    const bare = value(await createBead(pen, { title: "No photo" }));
    expect(codes(await handInBead(pen, exercise.code, bare.id, ""))).toEqual(["hand-in-without-photo"]);
    const made = await handIn();
    value(await withdrawHandIn(pen, made.handInId));
    value(await handInBead(pen, exercise.code, made.beadId, "this one"));
    expect(codes(await handInBead(pen, exercise.code, made.beadId, ""))).toEqual(["hand-in-bead-twice"]);
    expect(codes(await deleteBead(pen, made.beadId, new Date()))).toEqual(["bead-handed-in"]);
    await expectLogCoversEverything();
  });
});

const said: FeedbackContent = {
  ...emptyFeedback,
  marks: { profile: 3 },
  quick: ["Keep the stick-out even."],
  remark: "Nearly there.",
};

describe("feedback", () => {
  it("is a draft with revisions, then frozen, and the reply stands beside it", async () => {
    const { handInId } = await handIn();
    expect((await getFeedback(db, handInId)).revision).toBe(0);
    expect(codes(await returnFeedback(pen, handInId, 0, null, new Date()))).toEqual(["feedback-empty"]);
    value(await saveFeedback(pen, handInId, 0, said, null));
    expect(codes(await saveFeedback(pen, handInId, 0, said, null))).toEqual(["feedback-changed-elsewhere"]);
    expect(codes(await replyToFeedback(pen, handInId, "thanks", new Date()))).toEqual([
      "feedback-not-returned",
    ]);
    const waiting = await countWaiting(db);
    const { digest } = value(await returnFeedback(pen, handInId, 1, null, new Date()));
    // A draft is no answer; what was returned does not wait.
    expect(await countWaiting(db)).toBe(waiting - 1);
    const row = await db.feedback.findUniqueOrThrow({ where: { handInId } });
    expect(sha256Text(row.returned!)).toBe(digest);
    expect(row.returned).not.toContain("Imke");
    const { returned } = await getFeedback(db, handInId);
    expect(returned).toMatchObject({ remark: "Nearly there.", quick: said.quick, handInId });
    // Weight 3 at step 3 of 4 is 2.25; the four other lines of the usual rubric are open.
    expect(returned?.score).toEqual({ points: 2.25, outOf: 10, open: 4, share: null });
    value(await replyToFeedback(pen, handInId, "  I will.  ", new Date()));
    expect((await getFeedback(db, handInId)).reply).toBe("I will.");
    await expectLogCoversEverything();
  });

  it("cannot be changed once returned: not by saving, returning, withdrawing or around us in the database", async () => {
    const { handInId } = await handIn();
    value(await saveFeedback(pen, handInId, 0, said, null));
    value(await returnFeedback(pen, handInId, 1, null, new Date()));
    expect(codes(await saveFeedback(pen, handInId, 1, said, null))).toEqual(["feedback-returned"]);
    expect(codes(await returnFeedback(pen, handInId, 1, null, new Date()))).toEqual(["feedback-returned"]);
    expect(codes(await withdrawHandIn(pen, handInId))).toEqual(["hand-in-answered"]);
    const before = await db.feedback.findUniqueOrThrow({ where: { handInId } });
    for (const change of [
      `"returned" = '{}'`,
      `"digest" = '0'`,
      `"returnedAt" = CURRENT_TIMESTAMP`,
      `"returned" = NULL`,
    ])
      await expect(
        db.$executeRawUnsafe(`UPDATE "Feedback" SET ${change} WHERE "handInId" = '${handInId}'`),
        change,
      ).rejects.toThrow(/returned feedback is not changed/);
    expect(await db.feedback.findUniqueOrThrow({ where: { handInId } })).toEqual(before);
  });

  it("goes with a hand-in that is withdrawn; the bead stays", async () => {
    const made = await handIn();
    value(await saveFeedback(pen, made.handInId, 0, said, null));
    value(await withdrawHandIn(pen, made.handInId));
    expect(await getHandIn(db, made.handInId)).toBeNull();
    expect((await getBead(db, made.beadId))?.handInId).toBeNull();
    await expectLogCoversEverything();
  });

  it("stays sound when its student is removed, and holds no name then either", async () => {
    const leaver = value(await addStudent(pen, groupId, { name: "Pim Sorrel", mark: null }));
    const made = value(await handInPhoto(db, exercise.code, form(leaver.id), photo(), anonymous));
    value(await saveFeedback(pen, made.handInId, 0, said, null));
    value(await returnFeedback(pen, made.handInId, 1, null, new Date()));
    value(await replyToFeedback(pen, made.handInId, "Pim says thanks", new Date()));
    value(await removePerson(pen, leaver.id, new Date()));
    const everything = JSON.stringify([
      await db.feedback.findMany(),
      await db.handIn.findMany(),
      await db.bead.findMany(),
      await db.logEntry.findMany(),
    ]);
    expect(everything).not.toContain("Pim");
    await expectLogCoversEverything();
    const { findings } = await verifyRecords(db, fresh().folder);
    // The photos of this test were never stored, which the verifier must say; nothing else may be wrong.
    expect(findings.filter(({ code }) => code !== "photo-missing")).toEqual([]);
  });
});

describe("groups and phrases", () => {
  it("name a group once, and list who is in it", async () => {
    expect(codes(await createGroup(pen, "Bay 3, mornings"))).toEqual(["group-name-taken"]);
    expect(codes(await createGroup(pen, "  "))).toEqual(["group-name-missing"]);
    const group = (await listGroups(db)).find(({ id }) => id === groupId);
    expect(group?.members).toMatchObject([{ name: "Imke Tal", mark: "W-07" }]);
    expect((await listHandIns(db, { groupId })).length).toBeGreaterThan(3);
  });

  it("keep phrases in the order they were given", async () => {
    const [a, b, c] = [
      value(await addPhrase(pen, "First", null)),
      value(await addPhrase(pen, "Second", null)),
      value(await addPhrase(pen, "Third", null)),
    ];
    value(await movePhrase(pen, c.id, -1, null));
    value(await movePhrase(pen, a.id, -1, null));
    expect((await listPhrases(db, null)).map(({ text }) => text)).toEqual(["First", "Third", "Second"]);
    value(await deletePhrase(pen, b.id, null));
    expect(codes(await deletePhrase(pen, b.id, null))).toEqual(["phrase-gone"]);
    await expectLogCoversEverything();
  });
});
