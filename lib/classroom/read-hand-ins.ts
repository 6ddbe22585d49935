import type { Db, Tx } from "@/lib/db";
import type { Thing } from "@/lib/people";
import { sha256Text } from "@/lib/store";

export interface HandInRecord {
  readonly id: string;
  readonly exerciseId: string;
  readonly exerciseTitle: string;
  readonly code: string;
  readonly beadId: string;
  readonly personId: string | null;
  /** What to call the student on a screen: their name in the list, what they typed, or null when it was removed. */
  readonly student: string | null;
  /** Stands for the student in counts: the person's id, or what somebody typed, told apart by case only. */
  readonly studentKey: string;
  readonly note: string | null;
  /** ISO 8601, UTC. */
  readonly handedInAt: string;
  readonly late: boolean;
  /** Which of this student's hand-ins for this exercise it is, from 1. */
  readonly attempt: number;
  /** null: no answer begun. */
  readonly feedback: {
    readonly returnedAt: string | null;
    readonly repliedAt: string | null;
    readonly seenAt: string | null;
  } | null;
}

const around = {
  person: { select: { name: true } },
  exercise: { select: { title: true, code: true, dueAt: true } },
  feedback: { select: { returnedAt: true, repliedAt: true, seenAt: true } },
} as const;
type Row = NonNullable<Awaited<ReturnType<typeof findRow>>>;
const findRow = (db: Db | Tx, where: { id: string } | { secretHash: string }) =>
  db.handIn.findUnique({ where, include: around });

type Named = Pick<Row, "id" | "personId" | "givenName">;
const keyOf = ({ id, personId, givenName }: Named): string =>
  personId ?? (givenName ? `called:${givenName.toLowerCase()}` : `hand-in:${id}`);

function toHandIn(row: Row, attempt: number): HandInRecord {
  const { id, exerciseId, beadId, personId, note, givenName, exercise, feedback } = row;
  return {
    id,
    exerciseId,
    exerciseTitle: exercise.title,
    code: exercise.code,
    beadId,
    personId,
    student: row.person?.name ?? givenName,
    studentKey: keyOf(row),
    note,
    handedInAt: row.handedInAt.toISOString(),
    attempt,
    late: exercise.dueAt !== null && row.handedInAt > exercise.dueAt,
    feedback: feedback && {
      returnedAt: feedback.returnedAt?.toISOString() ?? null,
      repliedAt: feedback.repliedAt?.toISOString() ?? null,
      seenAt: feedback.seenAt?.toISOString() ?? null,
    },
  };
}

const oldestFirst = [{ handedInAt: "asc" }, { id: "asc" }] as const;

/** One hand-in with its place among the student's others for the same exercise. */
async function counted(db: Db, row: Row | null): Promise<HandInRecord | null> {
  if (!row) return null;
  const all = await db.handIn.findMany({
    where: { exerciseId: row.exerciseId },
    select: { id: true, personId: true, givenName: true },
    orderBy: [...oldestFirst],
  });
  const own = all.filter((one) => keyOf(one) === keyOf(row));
  return toHandIn(row, own.findIndex(({ id }) => id === row.id) + 1);
}

export async function getHandIn(db: Db, id: string): Promise<HandInRecord | null> {
  return counted(db, await findRow(db, { id }));
}

/** The hand-in a secret address opens; null when code and secret do not belong together. */
export async function handInBySecret(db: Db, code: string, secret: string): Promise<HandInRecord | null> {
  const row = await findRow(db, { secretHash: sha256Text(secret) });
  // The secret alone is the key: an exercise may have another code by now.
  return row && code.length <= 20 ? counted(db, row) : null;
}

/** Oldest first. */
export async function listHandIns(
  db: Db,
  only: { readonly exerciseId?: string; readonly groupId?: string; readonly personId?: string } = {},
): Promise<readonly HandInRecord[]> {
  const { exerciseId, groupId, personId } = only;
  const rows = await db.handIn.findMany({
    where: {
      ...(exerciseId === undefined ? {} : { exerciseId }),
      ...(personId === undefined ? {} : { personId }),
      ...(groupId === undefined ? {} : { exercise: { groupId } }),
    },
    include: around,
    orderBy: [...oldestFirst],
  });
  // Whatever is asked for holds all hand-ins of a student for an exercise, or none.
  const tries = new Map<string, number>();
  return rows.map((row) => {
    const key = `${row.exerciseId} ${keyOf(row)}`;
    const attempt = (tries.get(key) ?? 0) + 1;
    tries.set(key, attempt);
    return toHandIn(row, attempt);
  });
}

/** Those without an answer that somebody may answer: all but their own. */
export const waitingFor = (
  handIns: readonly HandInRecord[],
  personId: string | null,
): readonly HandInRecord[] =>
  handIns.filter((one) => !one.feedback?.returnedAt && (personId === null || one.personId !== personId));

/** How many were handed in and not answered yet; `but`: whose own are left out, because somebody else answers them. */
export async function countWaiting(db: Db, but: string | null = null): Promise<number> {
  const unanswered = { OR: [{ feedback: null }, { feedback: { returnedAt: null } }] };
  const all = await db.handIn.count({ where: unanswered });
  if (but === null) return all;
  const own = { OR: [{ personId: but }, { personId: null, bead: { welderId: but } }] };
  return all - (await db.handIn.count({ where: { AND: [unanswered, own] } }));
}

/** To whom a hand-in belongs; null when there is none. */
export async function handInThing(db: Db | Tx, id: string): Promise<Thing | null> {
  const row = await db.handIn.findUnique({
    where: { id },
    select: { personId: true, beadId: true, bead: { select: { welderId: true } } },
  });
  return row ? { personId: row.personId ?? row.bead.welderId, beadId: row.beadId } : null;
}
