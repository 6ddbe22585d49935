import { plannedBead } from "@/lib/assess";
import { fail, issue, ok, type Result } from "@/lib/base";
import { makeBead } from "@/lib/beads";
import type { Db } from "@/lib/db";
import { newId, writing, type Pen, type RecordIssue } from "@/lib/store";
import { setupAt, TrialSchema, type Trial } from "@/lib/trials";

export interface TrialRecord {
  readonly id: string;
  readonly number: number;
  readonly revision: number;
  readonly createdAt: string;
  /** Whose beads these are; null: anybody's. */
  readonly personId: string | null;
  readonly content: Trial;
  /** Which bead was run at which point. */
  readonly runs: readonly { readonly place: number; readonly beadId: string }[];
}

type Row = {
  id: string;
  number: number;
  revision: number;
  createdAt: Date;
  personId: string | null;
  content: unknown;
  runs: { place: number; beadId: string }[];
};

const withRuns = {
  include: { runs: { orderBy: { place: "asc" }, select: { place: true, beadId: true } } },
} as const;

const toTrial = ({ id, number, revision, createdAt, personId, content, runs }: Row): TrialRecord => ({
  id,
  number,
  revision,
  createdAt: createdAt.toISOString(),
  personId,
  content: TrialSchema.parse(content),
  runs,
});

/** Every trial, newest first; of one person where `personId` is said. */
export async function listTrials(
  db: Db,
  only: { readonly personId?: string } = {},
): Promise<readonly TrialRecord[]> {
  const rows = await db.trial.findMany({ where: only, orderBy: { number: "desc" }, ...withRuns });
  return rows.map(toTrial);
}

export async function getTrial(db: Db, id: string): Promise<TrialRecord | null> {
  const row = await db.trial.findUnique({ where: { id }, ...withRuns });
  return row && toTrial(row);
}

/** The trial a bead belongs to, and its place in it. */
export async function trialOfBead(
  db: Db,
  beadId: string,
): Promise<{ readonly trial: TrialRecord; readonly place: number } | null> {
  const run = await db.trialBead.findUnique({ where: { beadId } });
  const trial = run && (await getTrial(db, run.trialId));
  return trial && { trial, place: run!.place };
}

/** A new trial with the next running number. */
export async function createTrial(
  pen: Pen,
  input: unknown,
  personId: string | null,
): Promise<Result<TrialRecord, RecordIssue>> {
  const parsed = TrialSchema.safeParse(input);
  if (!parsed.success) return fail(issue("trial-not-understood"));
  return writing(pen, async (tx, log) => {
    const last = await tx.trial.findFirst({ orderBy: { number: "desc" }, select: { number: true } });
    const number = (last?.number ?? 0) + 1;
    const row = await tx.trial.create({
      data: { id: newId(), number, content: parsed.data, personId },
      ...withRuns,
    });
    await log(`trial:${row.id}`, "trial.made", { number });
    return ok(toTrial(row));
  });
}

/**
 * Begins the bead of one point: a bead with that set-up as plan, on the trial, in one change. `at`: its settings, added to the points
 * where the trial has none of this place yet. Refused where the point was begun already.
 */
export async function beginRun(
  pen: Pen,
  trialId: string,
  { place, at }: { readonly place: number; readonly at: readonly number[] },
  welderId: string | null,
): Promise<Result<{ readonly beadId: string }, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const row = await tx.trial.findUnique({ where: { id: trialId }, ...withRuns });
    if (row === null) return fail(issue("trial-gone"));
    const { content, runs, number } = toTrial(row);
    const taken = runs.some((run) => run.place === place);
    if (taken || place > content.points.length) return fail(issue("trial-changed-elsewhere"));
    const points = place === content.points.length ? [...content.points, [...at]] : content.points;
    const next = TrialSchema.safeParse({ ...content, points });
    if (!next.success) return fail(issue("trial-not-understood"));
    const made = await makeBead(tx, log, {
      title: `${content.title.slice(0, 100)}, run ${place + 1}`,
      ...plannedBead(setupAt(content, points[place]!)),
      welderId,
    });
    if (!made.ok) return made;
    await tx.trialBead.create({ data: { trialId, place, beadId: made.value.id } });
    await tx.trial.update({
      where: { id: trialId },
      data: { content: next.data, revision: row.revision + 1 },
    });
    await log(`trial:${trialId}`, "trial.run-begun", { number, place: place + 1 });
    return ok({ beadId: made.value.id });
  });
}
