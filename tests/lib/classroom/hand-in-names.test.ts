import { beforeAll, describe, expect, it } from "vitest";
import { getBead } from "@/lib/beads";
import {
  addPhrase,
  changePhrase,
  deletePhrase,
  movePhrase,
  copyExercise,
  createExercise,
  getExercise,
  getHandIn,
  handInBySecret,
  handInPhoto,
  linkHandIns,
  listHandIns,
  listPhrases,
  markSeen,
  reissueAddress,
  returnedFeedbacks,
  returnFeedback,
  saveFeedback,
  type ExerciseRecord,
} from "@/lib/classroom";
import { emptyExercise, emptyFeedback } from "@/lib/course";
import type { Db } from "@/lib/db";
import { addPerson, addStudent, createGroup, setAccount } from "@/lib/roster";
import { sha256Text, type Pen } from "@/lib/store";
import { subjectState } from "@/lib/store/subjects";
import { verifyRecords } from "@/lib/verify";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();
let db: Db;
let pen: Pen;
let groupId: string;
let imke: { readonly id: string };
let exercise: ExerciseRecord;

function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const codes = (result: { ok: boolean; issues?: readonly { code: string }[] }) =>
  (result.issues ?? []).map(({ code }) => code);

let photos = 0;
async function handIn(givenName: string, more: object = {}) {
  photos += 1;
  const photo = {
    sha256: sha256Text(`p${photos}`),
    format: "jpeg",
    bytes: 9,
    widthPx: 800,
    heightPx: 600,
  };
  const run = { wireFeedMPerMin: null, volts: null, ctwdMm: null, polarity: null };
  const form = { personId: null, givenName, note: null, run, ...more };
  return value(await handInPhoto(db, exercise.code, form, photo, { by: null, signedInAs: null }));
}

async function allHolds(): Promise<void> {
  const { findings } = await verifyRecords(db, fresh().folder);
  expect(findings.filter(({ code }) => code !== "photo-missing")).toEqual([]);
}

beforeAll(async () => {
  ({ db, pen } = fresh());
  groupId = value(await createGroup(pen, "Bay 3")).id;
  imke = value(await addStudent(pen, groupId, { name: "Imke Tal", mark: "W-07" }));
  const content = { ...emptyExercise, joint: "lap", setup: { ...emptyExercise.setup, volts: 17 } };
  const input = { title: "Lap", content, open: true, withoutAccount: true, dueAt: null };
  const { id } = value(await createExercise(pen, groupId, input));
  exercise = (await getExercise(db, id))!;
});

describe("whose a hand-in is", () => {
  it("is found by the name on the roster, whatever its case, and by nothing less", async () => {
    const [own, part] = [await handIn("imke tal"), await handIn("Imke")];
    expect(await getHandIn(db, own.handInId)).toMatchObject({ personId: imke.id, student: "Imke Tal" });
    expect(await getHandIn(db, part.handInId)).toMatchObject({ personId: null, student: "Imke" });
  });

  it("is linked afterwards, with all of the group under that name, and counts as the next attempt", async () => {
    const [one, two, other] = [await handIn("Immi"), await handIn("IMMI "), await handIn("Joss")];
    const stranger = value(
      await addStudent(pen, value(await createGroup(pen, "Evenings")).id, { name: "X", mark: null }),
    );
    expect(codes(await linkHandIns(pen, one.handInId, stranger.id))).toEqual(["hand-in-other-group"]);
    expect(value(await linkHandIns(pen, one.handInId, imke.id))).toEqual({ linked: 2 });
    expect(codes(await linkHandIns(pen, two.handInId, imke.id))).toEqual(["hand-in-linked"]);
    const own = (await listHandIns(db, { personId: imke.id })).map(({ id, attempt }) => [id, attempt]);
    expect(own.slice(-2)).toEqual([
      [one.handInId, 2],
      [two.handInId, 3],
    ]);
    expect((await getHandIn(db, two.handInId))?.attempt).toBe(3);
    expect(await getBead(db, two.beadId)).toMatchObject({ welderId: imke.id });
    expect((await getHandIn(db, other.handInId))?.personId).toBeNull();
    await allHolds();
  });

  it("opens by a new address, and no longer by the lost one", async () => {
    const made = await handIn("Kaj");
    const renewed = value(await reissueAddress(pen, made.handInId));
    expect(renewed.secret).not.toBe(made.secret);
    expect(await handInBySecret(db, made.code, made.secret)).toBeNull();
    expect((await handInBySecret(db, renewed.code, renewed.secret))?.id).toBe(made.handInId);
    const entries = await db.logEntry.findMany({ where: { subject: `hand-in:${made.handInId}` } });
    expect(JSON.stringify(entries)).not.toContain(renewed.secret);
    await allHolds();
  });
});

describe("what was run", () => {
  it("is nothing of the exercise, unless the student says so", async () => {
    const silent = await getBead(db, (await handIn("A")).beadId);
    const asAsked = await getBead(db, (await handIn("B", { asAsked: true })).beadId);
    expect(silent?.content.setup).toMatchObject({ joint: null, volts: null });
    expect(asAsked?.content.setup).toMatchObject({ joint: "lap", volts: 17 });
  });
});

describe("an answer", () => {
  it("is seen once it was, and its score and what was drawn are read from the frozen text", async () => {
    const { handInId, beadId } = await handIn("Lene");
    const photoId = (await getBead(db, beadId))!.photos[0]!.id;
    const at = { x: 1, y: 1 };
    const arrow = {
      id: "a",
      kind: "arrow",
      from: at,
      to: { x: 9, y: 9 },
      words: "Undercut",
      imperfection: "undercut",
    };
    const marks = Object.fromEntries(emptyExercise.rubric.map(({ id }) => [id, 3]));
    const draft = { ...emptyFeedback, layers: [{ photoId, items: [arrow] }], marks };
    expect(codes(await markSeen(pen, handInId, new Date()))).toEqual(["feedback-not-returned"]);
    const { revision } = value(await saveFeedback(pen, handInId, 0, draft, null));
    value(await returnFeedback(pen, handInId, revision, null, new Date("2026-11-26T10:00:00Z")));
    // What was sealed before anybody looked has no such column in it.
    expect(await subjectState(db, `feedback:${handInId}`)).not.toHaveProperty("seenAt");
    await allHolds();
    value(await markSeen(pen, handInId, new Date("2026-11-26T11:00:00Z")));
    value(await markSeen(pen, handInId, new Date("2026-11-26T12:00:00Z")));
    expect((await getHandIn(db, handInId))?.feedback?.seenAt).toBe("2026-11-26T11:00:00.000Z");
    const answer = (await returnedFeedbacks(db, [handInId, "none"])).get(handInId);
    expect(answer?.score.share).toBe(0.75);
    expect(answer?.layers[0]?.items[0]).toMatchObject({ imperfection: "undercut" });
    await allHolds();
  });
});

describe("phrases, copies and marks", () => {
  it("an instructor's own phrases come first, and others do not have them", async () => {
    value(await addPhrase(pen, "Everybody's", null));
    const { id } = value(await addPhrase(pen, "Mine", "person-1"));
    expect((await listPhrases(db, "person-1")).map(({ text }) => text)).toEqual(["Mine", "Everybody's"]);
    expect((await listPhrases(db, "person-2")).map(({ text }) => text)).toEqual(["Everybody's"]);
    expect((await listPhrases(db, null)).map(({ text }) => text)).toEqual(["Everybody's"]);
    expect(await subjectState(db, `phrase:${id}`)).toHaveProperty("ownerId", "person-1");
    await allHolds();
  });

  it("nobody changes, moves or deletes what another keeps for themselves", async () => {
    const { id } = value(await addPhrase(pen, "Mine too", "person-1"));
    for (const other of ["person-2", null]) {
      expect(codes(await changePhrase(pen, id, "Taken over", other))).toEqual(["phrase-gone"]);
      expect(codes(await movePhrase(pen, id, -1, other))).toEqual(["phrase-gone"]);
      expect(codes(await deletePhrase(pen, id, other))).toEqual(["phrase-gone"]);
    }
    expect((await listPhrases(db, "person-1")).map(({ text }) => text)).toContain("Mine too");
    value(await changePhrase(pen, id, "Mine, reworded", "person-1"));
    expect((await listPhrases(db, "person-1")).map(({ text }) => text)).toContain("Mine, reworded");
    value(await deletePhrase(pen, id, "person-1"));
    expect((await listPhrases(db, "person-1")).map(({ text }) => text)).not.toContain("Mine, reworded");
    await allHolds();
  });

  it("a copy has the content, a code of its own and no date, and takes no bead yet", async () => {
    const { id } = value(await copyExercise(pen, exercise.id, groupId));
    const copy = (await getExercise(db, id))!;
    expect(copy).toMatchObject({ title: "Lap (copy)", open: false, dueAt: null, content: exercise.content });
    expect(copy.code).not.toBe(exercise.code);
  });

  it("an identification is one person's, however it is spelled", async () => {
    expect(codes(await addStudent(pen, groupId, { name: "Bo", mark: "w-07" }))).toEqual(["mark-taken"]);
    expect(codes(await addPerson(pen, { name: "Cy", mark: "W - 07", role: "inspector" }))).toEqual([
      "mark-taken",
    ]);
    const none = { name: "Bo", mark: "" };
    expect(codes(await addStudent(pen, groupId, none))).toEqual([]);
    expect(codes(await addStudent(pen, groupId, none))).toEqual([]);
    value(await setAccount(pen, imke.id, null));
  });
});
