import { z } from "zod";
import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import { newId, writing, type Pen, type RecordIssue } from "@/lib/store";

export interface PhraseRecord {
  readonly id: string;
  readonly text: string;
}

const TextSchema = z.string().trim().min(1).max(300);

/** In the order the instructor gave them. */
export async function listPhrases(db: Db): Promise<readonly PhraseRecord[]> {
  const rows = await db.phrase.findMany({ orderBy: [{ place: "asc" }, { id: "asc" }] });
  return rows.map(({ id, text }) => ({ id, text }));
}

export async function addPhrase(pen: Pen, text: unknown): Promise<Result<PhraseRecord, RecordIssue>> {
  const parsed = TextSchema.safeParse(text);
  if (!parsed.success) return fail(issue("phrase-not-understood", ["text"]));
  return writing(pen, async (tx, log) => {
    const last = await tx.phrase.findFirst({ orderBy: { place: "desc" }, select: { place: true } });
    const id = newId();
    await tx.phrase.create({ data: { id, text: parsed.data, place: (last?.place ?? -1) + 1 } });
    await log(`phrase:${id}`, "phrase.added");
    return ok({ id, text: parsed.data });
  });
}

export async function changePhrase(pen: Pen, id: string, text: unknown): Promise<Result<null, RecordIssue>> {
  const parsed = TextSchema.safeParse(text);
  if (!parsed.success) return fail(issue("phrase-not-understood", ["text"]));
  return writing(pen, async (tx, log) => {
    const { count } = await tx.phrase.updateMany({ where: { id }, data: { text: parsed.data } });
    if (count === 0) return fail(issue("phrase-gone"));
    await log(`phrase:${id}`, "phrase.changed");
    return ok(null);
  });
}

/** Changes places with the neighbour above or below; at the end of the list nothing happens. */
export async function movePhrase(pen: Pen, id: string, by: -1 | 1): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const rows = await tx.phrase.findMany({ orderBy: [{ place: "asc" }, { id: "asc" }] });
    const at = rows.findIndex((row) => row.id === id);
    if (at < 0) return fail(issue("phrase-gone"));
    const [one, other] = [rows[at], rows[at + by]];
    if (!one || !other) return ok(null);
    await tx.phrase.update({ where: { id: one.id }, data: { place: other.place } });
    await tx.phrase.update({ where: { id: other.id }, data: { place: one.place } });
    for (const row of [one, other]) await log(`phrase:${row.id}`, "phrase.moved");
    return ok(null);
  });
}

export async function deletePhrase(pen: Pen, id: string): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const { count } = await tx.phrase.deleteMany({ where: { id } });
    if (count === 0) return fail(issue("phrase-gone"));
    await log(`phrase:${id}`, "phrase.deleted");
    return ok(null);
  });
}
