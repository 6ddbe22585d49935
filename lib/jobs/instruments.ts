import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import { daysInOrder, InstrumentSchema, type Instrument } from "@/lib/inspect";
import { newId, writing, type Pen, type RecordIssue } from "@/lib/store";

export interface InstrumentRecord {
  readonly id: string;
  readonly content: Instrument;
  readonly retiredAt: string | null;
}

/** Every instrument, also those no longer in use, oldest first. */
export async function listInstruments(db: Db): Promise<readonly InstrumentRecord[]> {
  const rows = await db.instrument.findMany({ orderBy: { createdAt: "asc" } });
  return rows.map(({ id, content, retiredAt }) => ({
    id,
    content: InstrumentSchema.parse(content),
    retiredAt: retiredAt?.toISOString() ?? null,
  }));
}

const misread = (error: { issues: readonly { path: readonly PropertyKey[] }[] }) =>
  fail<RecordIssue>(issue("instrument-not-understood", error.issues[0]?.path.map(String) ?? []));

/** What a form sent, as an instrument; refused where its days cannot be true. */
function read(input: unknown): Result<Instrument, RecordIssue> {
  const parsed = InstrumentSchema.safeParse(input);
  if (!parsed.success) return misread(parsed.error);
  return daysInOrder(parsed.data) ? ok(parsed.data) : fail(issue("instrument-due-before-done"));
}

export async function addInstrument(
  pen: Pen,
  input: unknown,
): Promise<Result<{ readonly id: string }, RecordIssue>> {
  const parsed = read(input);
  if (!parsed.ok) return parsed;
  return writing(pen, async (tx, log) => {
    const { id } = await tx.instrument.create({ data: { id: newId(), content: parsed.value } });
    await log(`instrument:${id}`, "instrument.added", { kind: parsed.value.kind });
    return ok({ id });
  });
}

export async function changeInstrument(
  pen: Pen,
  id: string,
  input: unknown,
): Promise<Result<null, RecordIssue>> {
  const parsed = read(input);
  if (!parsed.ok) return parsed;
  return writing(pen, async (tx, log) => {
    const { count } = await tx.instrument.updateMany({ where: { id }, data: { content: parsed.value } });
    if (count === 0) return fail(issue("instrument-gone"));
    await log(`instrument:${id}`, "instrument.changed", { kind: parsed.value.kind });
    return ok(null);
  });
}

/** Takes an instrument out of use, or back into it (`null`). Signed records keep what they said of it. */
export async function retireInstrument(
  pen: Pen,
  id: string,
  at: Date | null,
): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const { count } = await tx.instrument.updateMany({ where: { id }, data: { retiredAt: at } });
    if (count === 0) return fail(issue("instrument-gone"));
    await log(`instrument:${id}`, at ? "instrument.retired" : "instrument.back");
    return ok(null);
  });
}
