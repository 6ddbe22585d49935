import { z } from "zod";
import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import { newId, writing, type Pen, type RecordIssue } from "@/lib/store";

export interface PhraseRecord {
  readonly id: string;
  readonly text: string;
  /** Kept by one instructor for themselves; otherwise everybody has it. */
  readonly own: boolean;
}

const TextSchema = z.string().trim().min(1).max(300);

/** Those this person has, their own before everybody's, in the order they were given. */
export async function listPhrases(db: Db, personId: string | null): Promise<readonly PhraseRecord[]> {
  const rows = await db.phrase.findMany({
    where: { OR: [{ ownerId: null }, ...(personId === null ? [] : [{ ownerId: personId }])] },
    orderBy: [{ place: "asc" }, { id: "asc" }],
  });
  const found = rows.map(({ id, text, ownerId }) => ({ id, text, own: ownerId !== null }));
  return [...found.filter(({ own }) => own), ...found.filter(({ own }) => !own)];
}

/** `ownerId`: the person who keeps it for themselves; null: everybody has it. */
export async function addPhrase(
  pen: Pen,
  text: unknown,
  ownerId: string | null,
): Promise<Result<PhraseRecord, RecordIssue>> {
  const parsed = TextSchema.safeParse(text);
  if (!parsed.success) return fail(issue("phrase-not-understood", ["text"]));
  return writing(pen, async (tx, log) => {
    const last = await tx.phrase.findFirst({ orderBy: { place: "desc" }, select: { place: true } });
    const id = newId();
    await tx.phrase.create({ data: { id, text: parsed.data, place: (last?.place ?? -1) + 1, ownerId } });
    await log(`phrase:${id}`, "phrase.added");
    return ok({ id, text: parsed.data, own: ownerId !== null });
  });
}

/** What somebody may change: everybody's and their own; what another keeps for themselves is not there for them. */
const within = (id: string, personId: string | null) => ({
  id,
  OR: [{ ownerId: null }, ...(personId === null ? [] : [{ ownerId: personId }])],
});

export async function changePhrase(
  pen: Pen,
  id: string,
  text: unknown,
  personId: string | null,
): Promise<Result<null, RecordIssue>> {
  const parsed = TextSchema.safeParse(text);
  if (!parsed.success) return fail(issue("phrase-not-understood", ["text"]));
  return writing(pen, async (tx, log) => {
    const { count } = await tx.phrase.updateMany({
      where: within(id, personId),
      data: { text: parsed.data },
    });
    if (count === 0) return fail(issue("phrase-gone"));
    await log(`phrase:${id}`, "phrase.changed");
    return ok(null);
  });
}

/** Changes places with the neighbour above or below; at the end of the list nothing happens. */
export async function movePhrase(
  pen: Pen,
  id: string,
  by: -1 | 1,
  personId: string | null,
): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const rows = await tx.phrase.findMany({ orderBy: [{ place: "asc" }, { id: "asc" }] });
    const one = rows.find((row) => row.id === id);
    if (!one || (one.ownerId !== null && one.ownerId !== personId)) return fail(issue("phrase-gone"));
    // Neighbours on the screen are of the same keeper.
    const same = rows.filter(({ ownerId }) => ownerId === one.ownerId);
    const other = same[same.findIndex((row) => row.id === id) + by];
    if (!other) return ok(null);
    await tx.phrase.update({ where: { id: one.id }, data: { place: other.place } });
    await tx.phrase.update({ where: { id: other.id }, data: { place: one.place } });
    for (const row of [one, other]) await log(`phrase:${row.id}`, "phrase.moved");
    return ok(null);
  });
}

export async function deletePhrase(
  pen: Pen,
  id: string,
  personId: string | null,
): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const { count } = await tx.phrase.deleteMany({ where: within(id, personId) });
    if (count === 0) return fail(issue("phrase-gone"));
    await log(`phrase:${id}`, "phrase.deleted");
    return ok(null);
  });
}
