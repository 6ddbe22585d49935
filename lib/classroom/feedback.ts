import { photoRoles } from "@/lib/assess";
import { fail, issue, ok, type Result } from "@/lib/base";
import {
  emptyFeedback,
  ExerciseContentSchema,
  FeedbackContentSchema,
  freezeFeedback,
  saysSomething,
  thawFeedback,
  type FeedbackContent,
  type ReturnedFeedback,
} from "@/lib/course";
import type { Db, Tx } from "@/lib/db";
import { DrawingSchema } from "@/lib/marks";
import { checkpoint, installationSigner, keepSignature, logHead } from "@/lib/keys";
import type { Thing } from "@/lib/people";
import { sha256Text, writing, type Pen, type RecordIssue } from "@/lib/store";
import { handInThing } from "./read-hand-ins";

export interface FeedbackRecord {
  readonly handInId: string;
  readonly authorId: string | null;
  /** 0: nothing saved yet. */
  readonly revision: number;
  readonly draft: FeedbackContent;
  /** What was returned, read back from the frozen text; null while it is a draft. */
  readonly returned: ReturnedFeedback | null;
  readonly digest: string | null;
  readonly returnedAt: string | null;
  readonly reply: string | null;
  readonly repliedAt: string | null;
  readonly seenAt: string | null;
}

/** The answer to a hand-in; an empty draft at revision 0 where none was begun. */
export async function getFeedback(db: Db, handInId: string): Promise<FeedbackRecord> {
  const row = await db.feedback.findUnique({ where: { handInId } });
  return {
    handInId,
    authorId: row?.authorId ?? null,
    revision: row?.revision ?? 0,
    draft: row ? FeedbackContentSchema.parse(row.draft) : emptyFeedback,
    returned: row?.returned ? thawFeedback(row.returned) : null,
    digest: row?.digest ?? null,
    returnedAt: row?.returnedAt?.toISOString() ?? null,
    reply: row?.reply ?? null,
    repliedAt: row?.repliedAt?.toISOString() ?? null,
    seenAt: row?.seenAt?.toISOString() ?? null,
  };
}

/** What was returned to these hand-ins, by their ids; those without an answer are not in it. */
export async function returnedFeedbacks(
  db: Db,
  handInIds: readonly string[],
): Promise<ReadonlyMap<string, ReturnedFeedback>> {
  const rows = await db.feedback.findMany({
    where: { handInId: { in: [...handInIds] }, returned: { not: null } },
    select: { handInId: true, returned: true },
  });
  return new Map(rows.map(({ handInId, returned }) => [handInId, thawFeedback(returned ?? "")]));
}

/** The student had the answer on their screen: noted the first time. */
export async function markSeen(pen: Pen, handInId: string, now: Date): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const row = await tx.feedback.findUnique({
      where: { handInId },
      select: { returnedAt: true, seenAt: true },
    });
    if (!row?.returnedAt) return fail(issue("feedback-not-returned"));
    if (row.seenAt) return ok(null);
    await tx.feedback.update({ where: { handInId }, data: { seenAt: now } });
    await log(`feedback:${handInId}`, "feedback.seen");
    return ok(null);
  });
}

/** Whoever teaches and welds does not answer themselves, by whatever roles. */
const isOwn = (thing: Thing | null, authorId: string | null): boolean =>
  authorId !== null && thing?.personId === authorId;

/** Saves the draft if it is still at revision `basedOn` (0: not begun) and nothing was returned. */
export async function saveFeedback(
  pen: Pen,
  handInId: string,
  basedOn: number,
  input: unknown,
  authorId: string | null,
): Promise<Result<{ readonly revision: number }, RecordIssue>> {
  const parsed = FeedbackContentSchema.safeParse(input);
  if (!parsed.success)
    return fail(issue("feedback-not-understood", parsed.error.issues[0]?.path.map(String) ?? []));
  return writing(pen, async (tx, log) => {
    const thing = await handInThing(tx, handInId);
    if (!thing) return fail(issue("hand-in-gone"));
    if (isOwn(thing, authorId)) return fail(issue("feedback-own"));
    const row = await tx.feedback.findUnique({ where: { handInId } });
    if (row?.returned) return fail(issue("feedback-returned"));
    if ((row?.revision ?? 0) !== basedOn) return fail(issue("feedback-changed-elsewhere"));
    const revision = basedOn + 1;
    const data = { draft: parsed.data, revision, authorId };
    await tx.feedback.upsert({ where: { handInId }, create: { handInId, ...data }, update: data });
    await log(`feedback:${handInId}`, "feedback.saved", { revision });
    return ok({ revision });
  });
}

const everything = {
  handIn: { include: { exercise: true, bead: { include: { photos: { orderBy: { place: "asc" } } } } } },
} as const;
type FullRow = NonNullable<Awaited<ReturnType<typeof findFull>>>;
const findFull = (tx: Tx, handInId: string) =>
  tx.feedback.findUnique({ where: { handInId }, include: everything });

function frozenText(row: FullRow, authorId: string | null, at: Date): string {
  const { exercise, bead } = row.handIn;
  const { aim, rubric } = ExerciseContentSchema.parse(exercise.content);
  return freezeFeedback(FeedbackContentSchema.parse(row.draft), {
    handInId: row.handInId,
    exercise: { id: exercise.id, revision: exercise.revision, title: exercise.title, aim },
    bead: { id: bead.id, number: bead.number, revision: bead.revision },
    authorId,
    returnedAt: at.toISOString(),
    rubric,
    photos: bead.photos.map(({ id, sha256, role, widthPx, heightPx, drawing }) => ({
      id,
      sha256,
      role: photoRoles.find((one) => one === role) ?? "face",
      widthPx,
      heightPx,
      drawing: DrawingSchema.parse(drawing),
    })),
  });
}

/**
 * Returns the draft as it stands at revision `basedOn` and freezes it under the installation's key: nothing can change it
 * afterwards.
 */
export async function returnFeedback(
  pen: Pen,
  handInId: string,
  basedOn: number,
  authorId: string | null,
  now: Date,
): Promise<Result<{ readonly digest: string }, RecordIssue>> {
  const keeper = await installationSigner(pen, now);
  return writing(pen, async (tx, log) => {
    const row = await findFull(tx, handInId);
    if (!row) return fail(issue("feedback-empty"));
    if (isOwn(await handInThing(tx, handInId), authorId)) return fail(issue("feedback-own"));
    if (row.returned !== null) return fail(issue("feedback-returned"));
    if (row.revision !== basedOn) return fail(issue("feedback-changed-elsewhere"));
    if (!saysSomething(FeedbackContentSchema.parse(row.draft))) return fail(issue("feedback-empty"));
    const returned = frozenText(row, authorId, now);
    const digest = sha256Text(returned);
    await tx.feedback.update({
      where: { handInId },
      data: { returned, digest, returnedAt: now, authorId },
    });
    const about = { subject: `feedback:${handInId}`, digest, at: now.toISOString(), head: await logHead(tx) };
    await keepSignature(tx, keeper.sign(about));
    await log(`feedback:${handInId}`, "feedback.returned", { digest, revision: basedOn });
    await checkpoint(tx, pen.by, keeper, now.toISOString());
    return ok({ digest });
  });
}

/** The student's reply beside the frozen answer. It may be written anew: the log keeps that it was. */
export async function replyToFeedback(
  pen: Pen,
  handInId: string,
  text: string,
  now: Date,
): Promise<Result<null, RecordIssue>> {
  const reply = text.trim();
  if (reply === "" || reply.length > 2000) return fail(issue("reply-not-understood"));
  return writing(pen, async (tx, log) => {
    const row = await tx.feedback.findUnique({ where: { handInId }, select: { returned: true } });
    if (!row?.returned) return fail(issue("feedback-not-returned"));
    await tx.feedback.update({ where: { handInId }, data: { reply, repliedAt: now } });
    await log(`feedback:${handInId}`, "feedback.replied");
    return ok(null);
  });
}
