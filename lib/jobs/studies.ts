import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db } from "@/lib/db";
import { GaugeStudySchema, studyFigures, type GaugeStudy, type ReadingStudy } from "@/lib/gauge";
import { canBeStudied, InstrumentSchema } from "@/lib/inspect";
import { newId, writing, type Pen, type RecordIssue } from "@/lib/store";

export interface StudyRecord {
  readonly id: string;
  readonly instrumentId: string;
  readonly study: GaugeStudy;
  readonly createdAt: string;
  /** Since when it no longer counts; null: it does. */
  readonly withdrawnAt: string | null;
}

type Row = Awaited<ReturnType<Db["gaugeStudy"]["findMany"]>>[number];
const toStudy = ({ id, instrumentId, content, createdAt, withdrawnAt }: Row): StudyRecord => ({
  id,
  instrumentId,
  study: GaugeStudySchema.parse(content),
  createdAt: createdAt.toISOString(),
  withdrawnAt: withdrawnAt?.toISOString() ?? null,
});

/** Studies of one gauge or of all, the newest day first. */
export async function listStudies(
  db: Db,
  only: { readonly instrumentId?: string } = {},
): Promise<readonly StudyRecord[]> {
  const rows = await db.gaugeStudy.findMany({
    where: only,
    orderBy: [{ createdAt: "desc" }, { id: "desc" }],
  });
  // Days compare as texts; among those of one day the one that was put in last stands first.
  return rows.map(toStudy).sort((a, b) => (a.study.on < b.study.on ? 1 : a.study.on > b.study.on ? -1 : 0));
}

export async function getStudy(db: Db, id: string): Promise<StudyRecord | null> {
  const row = await db.gaugeStudy.findUnique({ where: { id } });
  return row && toStudy(row);
}

/**
 * What readings taken on a day carry, by the gauge's id: of each gauge the newest study that was made by then, is not
 * withdrawn, and is large enough to speak.
 */
export async function studiesForReadings(db: Db, day: string): Promise<ReadonlyMap<string, ReadingStudy>> {
  const found = new Map<string, ReadingStudy>();
  for (const { instrumentId, study, withdrawnAt } of await listStudies(db)) {
    if (withdrawnAt !== null || study.on > day || found.has(instrumentId)) continue;
    const { reading } = studyFigures(study);
    if (reading) found.set(instrumentId, reading);
  }
  return found;
}

/** Keeps a study as it was read. Its unit is that of its gauge: degrees for a protractor, mm otherwise. */
export async function addStudy(
  pen: Pen,
  instrumentId: string,
  input: unknown,
): Promise<Result<{ readonly id: string }, RecordIssue>> {
  const parsed = GaugeStudySchema.safeParse(input);
  if (!parsed.success)
    return fail(issue("study-not-understood", parsed.error.issues[0]?.path.map(String) ?? []));
  return writing(pen, async (tx, log) => {
    const row = await tx.instrument.findUnique({ where: { id: instrumentId } });
    if (!row) return fail(issue("instrument-gone"));
    const { kind } = InstrumentSchema.parse(row.content);
    if (!canBeStudied(kind) || (kind === "protractor") !== (parsed.data.unit === "deg"))
      return fail(issue("study-not-understood", ["unit"]));
    const { id } = await tx.gaugeStudy.create({ data: { id: newId(), instrumentId, content: parsed.data } });
    await log(`study:${id}`, "study.added", { instrument: instrumentId });
    return ok({ id });
  });
}

/** Lets a study no longer count for readings, or count again (`null`). Readings taken meanwhile keep what they carry. */
export async function withdrawStudy(
  pen: Pen,
  id: string,
  at: Date | null,
): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const { count } = await tx.gaugeStudy.updateMany({ where: { id }, data: { withdrawnAt: at } });
    if (count === 0) return fail(issue("study-gone"));
    await log(`study:${id}`, at ? "study.withdrawn" : "study.back");
    return ok(null);
  });
}
