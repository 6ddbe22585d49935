import { randomInt } from "node:crypto";
import { fail, issue, ok, type Result } from "@/lib/base";
import type { Db, Tx } from "@/lib/db";
import {
  BEADS_A_ROUND,
  EyeAnswerSchema,
  EyeRoundSchema,
  nextBeadId,
  scoreRound,
  type EyeBead,
  type EyeLevel,
  type EyeLook,
  type EyeRound,
} from "@/lib/eye";
import { newId, sha256Text, writing, type Pen, type RecordIssue } from "@/lib/store";

export interface RoundRecord {
  readonly id: string;
  readonly personId: string | null;
  readonly setKey: string;
  readonly round: EyeRound;
  /** ISO 8601, UTC. */
  readonly startedAt: string;
  readonly finishedAt: string | null;
}

type Row = NonNullable<Awaited<ReturnType<typeof findRow>>>;
const findRow = (db: Db | Tx, id: string) => db.eyeRound.findUnique({ where: { id } });

const toRound = ({ id, personId, setKey, content, startedAt, finishedAt }: Row): RoundRecord => ({
  id,
  personId,
  setKey,
  round: EyeRoundSchema.parse(content),
  startedAt: startedAt.toISOString(),
  finishedAt: finishedAt?.toISOString() ?? null,
});

export async function getRound(db: Db, id: string): Promise<RoundRecord | null> {
  const row = await findRow(db, id);
  return row ? toRound(row) : null;
}

/** Finished and unfinished, oldest first: of one person, of one set of beads, or all. */
export async function listRounds(
  db: Db,
  only: { readonly personId?: string | null; readonly setKey?: string } = {},
): Promise<readonly RoundRecord[]> {
  const rows = await db.eyeRound.findMany({ where: only, orderBy: [{ startedAt: "asc" }, { id: "asc" }] });
  return rows.map(toRound);
}

/** Beads this person has not seen before others, each at random. */
function chosen(drawn: readonly string[], seen: ReadonlySet<string>): readonly string[] {
  const shuffled = drawn
    .map((id) => ({ id, place: randomInt(2 ** 31) }))
    .toSorted((a, b) => a.place - b.place);
  const fresh = shuffled.toSorted((a, b) => Number(seen.has(a.id)) - Number(seen.has(b.id)));
  return fresh.slice(0, BEADS_A_ROUND).map(({ id }) => id);
}

/** A new round out of what is drawn. */
export async function startRound(
  pen: Pen,
  personId: string | null,
  asked: { readonly look: EyeLook; readonly level: EyeLevel; readonly drawn: readonly string[] },
  now: Date,
): Promise<Result<{ readonly id: string }, RecordIssue>> {
  if (asked.drawn.length < BEADS_A_ROUND) return fail(issue("eye-too-few"));
  const before = await listRounds(pen.db, { personId });
  const beadIds = chosen(asked.drawn, new Set(before.flatMap(({ round }) => round.beadIds)));
  return begin(pen, personId, { look: asked.look, level: asked.level, beadIds: [...beadIds] }, now);
}

/** The same beads as another round, for another pair of eyes; their answers and scores stay unseen. */
export async function startSameRound(
  pen: Pen,
  personId: string | null,
  setKey: string,
  now: Date,
): Promise<Result<{ readonly id: string }, RecordIssue>> {
  const [like] = await listRounds(pen.db, { setKey });
  if (!like) return fail(issue("eye-gone"));
  const { look, level, beadIds } = like.round;
  return begin(pen, personId, { look, level, beadIds }, now);
}

async function begin(
  pen: Pen,
  personId: string | null,
  input: Pick<EyeRound, "look" | "level" | "beadIds">,
  now: Date,
): Promise<Result<{ readonly id: string }, RecordIssue>> {
  const content = EyeRoundSchema.parse(input);
  const setKey = sha256Text([content.level, ...content.beadIds].join(" ")).slice(0, 16);
  return writing(pen, async (tx, log) => {
    const { id } = await tx.eyeRound.create({
      data: { id: newId(), personId, setKey, content, startedAt: now },
    });
    await log(`eye:${id}`, "eye.begun", { set: setKey });
    return ok({ id });
  });
}

/**
 * Takes the answer to the next bead. With the last one the round is over and scored against `beads`, what is on them; an
 * answer once given stays.
 */
export async function answerBead(
  pen: Pen,
  id: string,
  input: unknown,
  beads: readonly EyeBead[],
  now: Date,
): Promise<Result<{ readonly finished: boolean }, RecordIssue>> {
  const answer = EyeAnswerSchema.safeParse(input);
  if (!answer.success) return fail(issue("eye-not-understood"));
  return writing(pen, async (tx, log) => {
    const row = await findRow(tx, id);
    if (!row) return fail(issue("eye-gone"));
    const { round } = toRound(row);
    if (nextBeadId(round) !== answer.data.beadId) return fail(issue("eye-answered"));
    const answered = { ...round, answers: [...round.answers, answer.data] };
    const finished = nextBeadId(answered) === null;
    const content = finished ? scoreRound(answered, beads) : answered;
    await tx.eyeRound.update({ where: { id }, data: { content, ...(finished ? { finishedAt: now } : {}) } });
    await log(`eye:${id}`, finished ? "eye.finished" : "eye.answered");
    return ok({ finished });
  });
}
