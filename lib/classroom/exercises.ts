import { randomInt } from "node:crypto";
import { z } from "zod";
import { fail, issue, ok, type Result } from "@/lib/base";
import {
  CODE_LENGTH,
  exerciseCode,
  ExerciseContentSchema,
  normaliseCode,
  type ExerciseContent,
} from "@/lib/course";
import type { Db, Tx } from "@/lib/db";
import { newId, writing, type Pen, type RecordIssue } from "@/lib/store";

export interface ExerciseRecord {
  readonly id: string;
  readonly group: { readonly id: string; readonly name: string; readonly closed: boolean };
  readonly title: string;
  readonly content: ExerciseContent;
  readonly revision: number;
  /** Of the hand-in address: /hand-in/CODE. */
  readonly code: string;
  /** Until when the code leads here: ISO 8601, UTC. */
  readonly codeUntil: string;
  readonly open: boolean;
  readonly withoutAccount: boolean;
  /** ISO 8601, UTC; null: no date. A late bead is still taken, and is seen to be late. */
  readonly dueAt: string | null;
  readonly handIns: number;
}

const ExerciseInputSchema = z.object({
  title: z.string().trim().min(1).max(120),
  content: ExerciseContentSchema,
  open: z.boolean(),
  withoutAccount: z.boolean(),
  dueAt: z.iso.datetime().nullable(),
});

/** A notice stays on a bench for some weeks; a photo of it must not open the class for ever. Own estimate. */
const CODE_GOOD_DAYS = 30;

const codeUntil = ({ codeSince, createdAt }: { codeSince: Date | null; createdAt: Date }): string =>
  new Date((codeSince ?? createdAt).getTime() + CODE_GOOD_DAYS * 24 * 3_600_000).toISOString();

const around = {
  group: { select: { id: true, name: true, closedAt: true } },
  _count: { select: { handIns: true } },
} as const;
type Row = NonNullable<Awaited<ReturnType<typeof findRow>>>;
const findRow = (db: Db | Tx, where: { id: string } | { code: string }) =>
  db.exercise.findUnique({ where, include: around });

function toExercise(row: Row): ExerciseRecord {
  const { id, title, revision, code, open, withoutAccount } = row;
  return {
    id,
    title,
    revision,
    code,
    open,
    withoutAccount,
    codeUntil: codeUntil(row),
    group: { id: row.group.id, name: row.group.name, closed: row.group.closedAt !== null },
    content: ExerciseContentSchema.parse(row.content),
    dueAt: row.dueAt?.toISOString() ?? null,
    handIns: row._count.handIns,
  };
}

export async function getExercise(db: Db, id: string): Promise<ExerciseRecord | null> {
  const row = await findRow(db, { id });
  return row ? toExercise(row) : null;
}

/** By its hand-in code as somebody typed it. */
export async function exerciseByCode(db: Db | Tx, code: string): Promise<ExerciseRecord | null> {
  const row = await findRow(db, { code: normaliseCode(code) });
  return row ? toExercise(row) : null;
}

/** Of one group or of all, newest first. */
export async function listExercises(
  db: Db,
  only: { readonly groupId?: string } = {},
): Promise<readonly ExerciseRecord[]> {
  const rows = await db.exercise.findMany({
    where: only,
    include: around,
    orderBy: [{ createdAt: "desc" }, { id: "asc" }],
  });
  return rows.map(toExercise);
}

/** A code nobody has yet; the column is unique, so a lucky twin would be refused, not shared. */
async function freshCode(tx: Tx): Promise<string> {
  for (;;) {
    const code = exerciseCode(Array.from({ length: CODE_LENGTH }, () => randomInt(2 ** 32) / 2 ** 32));
    if (!(await tx.exercise.findUnique({ where: { code }, select: { id: true } }))) return code;
  }
}

function parsed(input: unknown) {
  const read = ExerciseInputSchema.safeParse(input);
  if (read.success) return ok(read.data);
  const path = read.error.issues[0]?.path.map(String) ?? [];
  return fail(issue("exercise-not-understood" as const, path));
}

export async function createExercise(
  pen: Pen,
  groupId: string,
  input: unknown,
): Promise<Result<{ readonly id: string }, RecordIssue>> {
  const read = parsed(input);
  if (!read.ok) return read;
  return writing(pen, async (tx, log) => {
    if (!(await tx.group.findUnique({ where: { id: groupId } }))) return fail(issue("group-gone"));
    const id = newId();
    const code = await freshCode(tx);
    const dueAt = read.value.dueAt === null ? null : new Date(read.value.dueAt);
    await tx.exercise.create({ data: { ...read.value, id, groupId, code, dueAt } });
    await log(`exercise:${id}`, "exercise.made", { group: groupId });
    return ok({ id });
  });
}

/** Saves the whole exercise if it is still at revision `basedOn`. The code stays: it hangs on the wall. */
export async function saveExercise(
  pen: Pen,
  id: string,
  basedOn: number,
  input: unknown,
): Promise<Result<{ readonly revision: number }, RecordIssue>> {
  const read = parsed(input);
  if (!read.ok) return read;
  return writing(pen, async (tx, log) => {
    const dueAt = read.value.dueAt === null ? null : new Date(read.value.dueAt);
    const { count } = await tx.exercise.updateMany({
      where: { id, revision: basedOn },
      data: { ...read.value, dueAt, revision: basedOn + 1 },
    });
    if (count === 0) {
      const there = await tx.exercise.findUnique({ where: { id }, select: { id: true } });
      return fail(issue(there ? "exercise-changed-elsewhere" : "exercise-gone"));
    }
    await log(`exercise:${id}`, "exercise.saved", { revision: basedOn + 1 });
    return ok({ revision: basedOn + 1 });
  });
}

/** Gives an exercise another code: the one before leads nowhere from then on. */
export async function renewCode(pen: Pen, id: string, now: Date): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const code = await freshCode(tx);
    const { count } = await tx.exercise.updateMany({ where: { id }, data: { code, codeSince: now } });
    if (count === 0) return fail(issue("exercise-gone"));
    await log(`exercise:${id}`, "exercise.code-renewed");
    return ok(null);
  });
}

/**
 * A copy of an exercise, for its own group or another, under its own title and code. It has no date and takes no beads
 * until somebody opens it: a date of last year would be wrong, and none is late at once.
 */
export async function copyExercise(
  pen: Pen,
  id: string,
  groupId: string,
): Promise<Result<{ readonly id: string }, RecordIssue>> {
  const found = await getExercise(pen.db, id);
  if (!found) return fail(issue("exercise-gone"));
  const { title, content, withoutAccount } = found;
  const copied = groupId === found.group.id ? `${title.slice(0, 112)} (copy)` : title;
  return createExercise(pen, groupId, { title: copied, content, withoutAccount, open: false, dueAt: null });
}

/** Opens or closes an exercise for hand-ins; nothing else about it changes. */
export async function setExerciseOpen(
  pen: Pen,
  id: string,
  open: boolean,
): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const { count } = await tx.exercise.updateMany({
      where: { id },
      data: { open, revision: { increment: 1 } },
    });
    if (count === 0) return fail(issue("exercise-gone"));
    await log(`exercise:${id}`, open ? "exercise.opened" : "exercise.closed");
    return ok(null);
  });
}
