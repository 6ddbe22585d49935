import { z } from "zod";
import { imperfectionIds, type ImperfectionId } from "@/lib/trade";
import { eyeLooks, type EyeBead } from "./eye-bead";
import { eyeLevels, failsLevel } from "./fails-level";
import { EyeAnswerSchema, scoreBead, type EyeScore } from "./score-bead";

/** Bump when the stored shape changes, and teach the parser the older one. */
export const EYE_ROUND_VERSION = 1;
export const BEADS_A_ROUND = 6;

const kind = z.enum(imperfectionIds);
const mm = z.number().min(0).max(20_000);

/** How one bead was answered, as it was scored when the round ended; the picture may be gone by then. */
const ScoredBeadSchema = z.object({
  beadId: z.string().max(80),
  found: z.array(kind).max(60),
  missed: z.array(kind).max(60),
  misnamed: z.array(z.object({ is: kind, called: kind })).max(60),
  falseCalls: z.array(kind).max(60),
  missized: z.array(z.object({ kind, isMm: mm, saidMm: mm })).max(60),
  /** Whether something on it fails the level, what was said of it; null: cannot be said, was not said. */
  fails: z.boolean().nullable(),
  saidFails: z.boolean().nullable(),
});
export type ScoredBead = z.infer<typeof ScoredBeadSchema>;

/** A round of beads to be looked at, with what was answered; `scored` once it is finished. */
export const EyeRoundSchema = z.object({
  schemaVersion: z.literal(EYE_ROUND_VERSION).default(EYE_ROUND_VERSION),
  look: z.enum(eyeLooks),
  level: z.enum(eyeLevels),
  beadIds: z.array(z.string().max(80)).min(1).max(30),
  answers: z.array(EyeAnswerSchema).max(30).default([]),
  scored: z.array(ScoredBeadSchema).max(30).nullable().default(null),
});
export type EyeRound = z.infer<typeof EyeRoundSchema>;

/** The first bead that was not answered; null when all were. */
export const nextBeadId = ({ beadIds, answers }: EyeRound): string | null =>
  beadIds.find((id) => !answers.some(({ beadId }) => beadId === id)) ?? null;

const copied = (score: EyeScore): Omit<ScoredBead, "beadId" | "fails" | "saidFails"> => ({
  found: [...score.found],
  missed: [...score.missed],
  misnamed: [...score.misnamed],
  falseCalls: [...score.falseCalls],
  missized: [...score.missized],
});

/** A finished round: every answered bead against what is on it. Beads nobody knows any more are left out. */
export function scoreRound(round: EyeRound, beads: readonly EyeBead[]): EyeRound {
  const scored = round.answers.flatMap((answer) => {
    const bead = beads.find(({ id }) => id === answer.beadId);
    if (!bead) return [];
    const fails = failsLevel(bead, round.level);
    return [{ beadId: bead.id, ...copied(scoreBead(bead, answer)), fails, saidFails: answer.fails }];
  });
  return { ...round, scored };
}

/** Rounds of one person, oldest first, as one line for each kind: found of those there were, round by round. */
export function kindProgress(
  rounds: readonly (readonly ScoredBead[])[],
): readonly { readonly kind: ImperfectionId; readonly byRound: readonly string[] }[] {
  const there = ({ found, missed, misnamed }: ScoredBead) => [
    ...found,
    ...missed,
    ...misnamed.map(({ is }) => is),
  ];
  const kinds = imperfectionIds.filter((one) => rounds.flat().some((bead) => there(bead).includes(one)));
  return kinds.map((one) => ({
    kind: one,
    byRound: rounds.map((beads) => {
      const on = beads.filter((bead) => there(bead).includes(one));
      return on.length === 0 ? "" : `${on.filter(({ found }) => found.includes(one)).length} of ${on.length}`;
    }),
  }));
}
