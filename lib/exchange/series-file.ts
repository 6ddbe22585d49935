import { z } from "zod";
import { issue } from "@/lib/base";
import { CardSchema } from "@/lib/cards";
import { MOST_BEADS, TrialSchema } from "@/lib/trials";
import { CountedSchema, SafeIdSchema, type ExchangeBead } from "./bead-file";
import type { ExchangeIssue } from "./issue";
import { repeated } from "./read-versioned";

const time = z.iso.datetime();
const id = SafeIdSchema;

/**
 * A trial with every run it knows, whether or not that bead travels: which points were begun is the trial's own story. Whose
 * it was stays in its shop.
 */
export const ExchangeTrialSchema = z.object({
  id,
  number: CountedSchema,
  revision: CountedSchema,
  createdAt: time,
  content: TrialSchema,
  /** Which bead was run at which point, sorted by place. */
  runs: z
    .array(
      z.object({
        place: z
          .int()
          .min(0)
          .max(MOST_BEADS - 1),
        beadId: id,
      }),
    )
    .max(MOST_BEADS)
    .readonly(),
});
export type ExchangeTrial = z.infer<typeof ExchangeTrialSchema>;

/** A card with those beads along that were run by it. */
export const ExchangeCardSchema = z.object({
  id,
  number: CountedSchema,
  createdAt: time,
  retiredAt: time.nullable(),
  /** The bead or trial it was made from is named only where that one travels too: numbers belong to a shop. */
  content: CardSchema,
  beadIds: z.array(id).max(2000).readonly(),
});
export type ExchangeCard = z.infer<typeof ExchangeCardSchema>;

/** Trials and cards that go with beads, each list by number. */
export interface SeriesAlong {
  readonly trials: readonly ExchangeTrial[];
  readonly cards: readonly ExchangeCard[];
}
export const noSeries: SeriesAlong = { trials: [], cards: [] };

/** What a schema cannot say: ids are unique, a place is one of the trial's points, a bead is in one trial and under one card. */
export function seriesIssues(
  { trials, cards }: SeriesAlong,
  beads: readonly Pick<ExchangeBead, "id">[],
): readonly ExchangeIssue[] {
  const known = new Set(beads.map((bead) => bead.id));
  const wrong = (path: string, i: number, problem: string): ExchangeIssue =>
    issue("malformed", [path, i], { problem });
  const named = (ids: readonly string[]): readonly { readonly id: string }[] =>
    ids.map((one) => ({ id: one }));
  return [
    ...repeated(trials, ["trials"]),
    ...repeated(cards, ["cards"]),
    ...repeated(named(trials.flatMap(({ runs }) => runs.map(({ beadId }) => beadId))), ["trials", "runs"]),
    ...repeated(named(cards.flatMap(({ beadIds }) => beadIds)), ["cards", "beadIds"]),
    ...trials.flatMap(({ content, runs }, i) => {
      const places = runs.map(({ place }) => place);
      const sound = new Set(places).size === places.length && places.every((p) => p < content.points.length);
      return sound ? [] : [wrong("trials", i, "place-without-point")];
    }),
    ...cards.flatMap(({ beadIds }, i) =>
      beadIds.every((one) => known.has(one)) ? [] : [wrong("cards", i, "bead-missing")],
    ),
  ];
}
