import { randomBytes } from "node:crypto";
import { z } from "zod";
import { emptyBeadJudgement, newPhotoContent } from "@/lib/assess";
import { fail, issue, ok, type Result } from "@/lib/base";
import { keepFacts, nextBeadNumber, type NewPhoto } from "@/lib/beads";
import { handInSetup, RunChoicesSchema } from "@/lib/course";
import type { Db, Tx } from "@/lib/db";
import { foldText } from "@/lib/facts";
import { sha256Text, newId, writing, type Pen, type RecordIssue } from "@/lib/store";
import { exerciseByCode, type ExerciseRecord } from "./exercises";

/** Who hands in and what they say with it. Exactly one of person and name. */
export const HandInFormSchema = z.object({
  personId: z.string().min(1).max(40).nullable(),
  givenName: z.string().trim().min(1).max(80).nullable(),
  note: z
    .string()
    .trim()
    .max(600)
    .transform((text) => text || null)
    .nullable(),
  run: RunChoicesSchema,
  /** They said that they ran it as the exercise asks; otherwise nothing of the exercise counts as run. */
  asAsked: z.boolean().default(false),
});
export type HandInForm = z.infer<typeof HandInFormSchema>;

export interface HandedIn {
  readonly handInId: string;
  readonly beadId: string;
  readonly code: string;
  /** Of the address under which the answer is read. Stored nowhere: this is the one time it is told. */
  readonly secret: string;
}

/** The exercise a code leads to, if it takes a bead from this hand now. Ask before a photo is taken in. */
export async function takingExercise(
  db: Db | Tx,
  code: string,
  hasAccount: boolean,
  now = new Date(),
): Promise<Result<ExerciseRecord, RecordIssue>> {
  const exercise = await exerciseByCode(db, code);
  if (!exercise) return fail(issue("hand-in-code-unknown", ["code"]));
  if (now.toISOString() > exercise.codeUntil) return fail(issue("hand-in-code-old", ["code"]));
  if (!exercise.open || exercise.group.closed) return fail(issue("exercise-closed"));
  if (!hasAccount && !exercise.withoutAccount) return fail(issue("hand-in-needs-account"));
  return ok(exercise);
}

export const freshSecret = (): string => randomBytes(24).toString("base64url");

/** A person may hand in under their name only if they are in the exercise's group: a form can name anybody. */
async function studentOf(
  tx: Tx,
  exercise: ExerciseRecord,
  { personId, givenName }: HandInForm,
  { by, signedInAs }: { readonly by: string | null; readonly signedInAs: string | null },
): Promise<Result<{ personId: string | null; name: string | null }, RecordIssue>> {
  const id = signedInAs ?? personId;
  if (id === null && givenName === null) return fail(issue("hand-in-nameless"));
  if (id === null) return ok(await calledSo(tx, exercise.group.id, givenName ?? ""));
  const person = await tx.person.findFirst({
    where: { id, removedAt: null },
    select: { name: true, userId: true, groups: { where: { groupId: exercise.group.id } } },
  });
  if (!person || (signedInAs === null && person.groups.length === 0)) return fail(issue("person-gone"));
  if (signedInAs !== null && person.groups.length === 0) return fail(issue("hand-in-other-group"));
  // Whoever has an account shows it: their name alone is known to everybody in the shop.
  if (by === null && person.userId !== null) return fail(issue("hand-in-needs-account"));
  return ok({ personId: id, name: person.name });
}

/**
 * Somebody of the group who is called just so, by name or identification, and has no account; otherwise the name alone, to be
 * linked later. Two of a name are told apart by nobody but the instructor.
 */
async function calledSo(tx: Tx, groupId: string, typed: string) {
  const members = await tx.groupMember.findMany({
    where: { groupId, person: { removedAt: null, userId: null } },
    select: { person: { select: { id: true, name: true, mark: true } } },
  });
  const same = members.filter(({ person: { name, mark } }) =>
    [name, mark].some((one) => one !== null && foldText(one) === foldText(typed)),
  );
  const [only] = same.length === 1 ? same : [];
  return { personId: only?.person.id ?? null, name: only?.person.name ?? typed };
}

/**
 * A photo handed in becomes a bead with that photo and a hand-in, all or nothing. `by` null: whoever hands in has no
 * account, and the log names the hand-in itself. `signedInAs`: the student's person, which outranks the form.
 */
export async function handInPhoto(
  db: Db,
  code: string,
  input: unknown,
  photo: NewPhoto,
  { by, signedInAs }: { readonly by: string | null; readonly signedInAs: string | null },
): Promise<Result<HandedIn, RecordIssue>> {
  const form = HandInFormSchema.safeParse(input);
  if (!form.success)
    return fail(issue("hand-in-not-understood", form.error.issues[0]?.path.map(String) ?? []));
  const handInId = newId();
  return writing({ db, by: by ?? `hand-in:${handInId}` }, async (tx, log) => {
    const taking = await takingExercise(tx, code, by !== null);
    if (!taking.ok) return taking;
    const student = await studentOf(tx, taking.value, form.data, { by, signedInAs });
    if (!student.ok) return student;
    const twice = await tx.handIn.findFirst({
      where: { exerciseId: taking.value.id, bead: { photos: { some: { sha256: photo.sha256 } } } },
      select: { id: true },
    });
    if (twice) return fail(issue("hand-in-photo-twice"));
    const { beadId, number } = await newBead(tx, taking.value, form.data, student.value, photo);
    const secret = freshSecret();
    await tx.handIn.create({
      data: {
        id: handInId,
        exerciseId: taking.value.id,
        beadId,
        personId: student.value.personId,
        givenName: student.value.personId === null ? student.value.name : null,
        note: form.data.note,
        secretHash: sha256Text(secret),
      },
    });
    await keepFacts(tx, beadId);
    await log(`bead:${beadId}`, "bead.made", { number, sha256: photo.sha256, views: photo.views ?? [] });
    await log(`hand-in:${handInId}`, "hand-in.made", { exercise: taking.value.id, bead: beadId });
    return ok({ handInId, beadId, code: taking.value.code, secret });
  });
}

async function newBead(
  tx: Tx,
  exercise: ExerciseRecord,
  form: HandInForm,
  student: { readonly personId: string | null; readonly name: string | null },
  { views: _views, ...photo }: NewPhoto,
): Promise<{ beadId: string; number: number }> {
  const number = await nextBeadNumber(tx);
  const [beadId, photoId] = [newId(), newId()];
  const { criteriaId, criteriaSettings } = exercise.content;
  await tx.bead.create({
    data: {
      id: beadId,
      number,
      title: exercise.title,
      welder: student.name,
      welderId: student.personId,
      setup: handInSetup(exercise.content, form.run, form.asAsked),
      judgement: { ...emptyBeadJudgement, criteriaId, criteriaSettings },
      photos: {
        create: {
          id: photoId,
          role: "face",
          place: 0,
          ...photo,
          drawing: newPhotoContent(photoId, "face").drawing,
        },
      },
    },
  });
  return { beadId, number };
}

/** Hands in a bead that is there already. The bead's own set-up and criteria stay: it was run before. */
export async function handInBead(
  pen: Pen,
  code: string,
  beadId: string,
  note: string,
): Promise<Result<HandedIn, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const taking = await takingExercise(tx, code, true);
    if (!taking.ok) return taking;
    const bead = await tx.bead.findUnique({
      where: { id: beadId },
      select: { welderId: true, welder: true, handIn: true, photos: { select: { id: true } } },
    });
    if (!bead) return fail(issue("bead-gone"));
    if (bead.handIn) return fail(issue("hand-in-bead-twice"));
    if (bead.photos.length === 0) return fail(issue("hand-in-without-photo"));
    const [handInId, secret] = [newId(), freshSecret()];
    await tx.handIn.create({
      data: {
        id: handInId,
        exerciseId: taking.value.id,
        beadId,
        personId: bead.welderId,
        givenName: bead.welderId === null ? bead.welder : null,
        note: note.trim().slice(0, 600) || null,
        secretHash: sha256Text(secret),
      },
    });
    await log(`hand-in:${handInId}`, "hand-in.made", { exercise: taking.value.id, bead: beadId });
    return ok({ handInId, beadId, code: taking.value.code, secret });
  });
}

/** Takes a hand-in back while no answer was returned; a draft of one goes with it, the bead stays. */
export async function withdrawHandIn(pen: Pen, id: string): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const handIn = await tx.handIn.findUnique({ where: { id }, include: { feedback: true } });
    if (!handIn) return fail(issue("hand-in-gone"));
    if (handIn.feedback?.returned) return fail(issue("hand-in-answered"));
    await tx.handIn.delete({ where: { id } });
    if (handIn.feedback) await log(`feedback:${id}`, "feedback.dropped");
    await log(`hand-in:${id}`, "hand-in.withdrawn", { exercise: handIn.exerciseId, bead: handIn.beadId });
    return ok(null);
  });
}
