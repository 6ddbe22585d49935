import type { Db, Tx } from "@/lib/db";
import {
  ExchangeCardSchema,
  ExchangeTrialSchema,
  type ExchangeBead,
  type ExchangeCard,
  type ExchangeTrial,
  type SeriesAlong,
} from "@/lib/exchange";
import { listCards, listTrials, type CardRecord, type TrialRecord } from "@/lib/series";

/** Which trials and cards travel beside those the beads belong to. */
export interface SeriesAsked {
  /** Also those that no bead of these belongs to: a whole installation goes out. */
  readonly all?: boolean;
  /** One trial or card that is asked for by itself, though none of its beads was run yet. */
  readonly only?: string | undefined;
  /** Whether whoever asks may see a trial of this person. */
  readonly maySee?: (personId: string | null) => boolean;
}

/** A trial as it travels. */
export const exchangeTrial = ({
  id,
  number,
  revision,
  createdAt,
  content,
  runs,
}: TrialRecord): ExchangeTrial =>
  ExchangeTrialSchema.parse({ id, number, revision, createdAt, content, runs });

/** A card as it travels, with those of its beads that do. */
export const exchangeCard = (
  { id, number, createdAt, retiredAt, content, beadIds }: CardRecord,
  along: ReadonlySet<string>,
): ExchangeCard =>
  ExchangeCardSchema.parse({
    ...{ id, number, createdAt, retiredAt, content },
    beadIds: beadIds.filter((one) => along.has(one)),
  });

/** The trials these beads belong to and the cards they were run by, lowest number first. */
export async function seriesAlong(
  db: Db | Tx,
  beads: readonly Pick<ExchangeBead, "id" | "number">[],
  { all = false, only, maySee = () => true }: SeriesAsked = {},
): Promise<SeriesAlong> {
  const along = new Set(beads.map(({ id }) => id));
  const travels = (id: string, beadIds: readonly string[]): boolean =>
    all || id === only || beadIds.some((one) => along.has(one));
  const byNumber = (a: { readonly number: number }, b: { readonly number: number }) => a.number - b.number;
  const trials = (await listTrials(db as Db))
    .filter(({ id, runs }) =>
      travels(
        id,
        runs.map(({ beadId }) => beadId),
      ),
    )
    .filter(({ personId }) => maySee(personId))
    .map(exchangeTrial)
    .toSorted(byNumber);
  const cards = (await listCards(db as Db))
    .filter(({ id, beadIds }) => travels(id, beadIds))
    .map((card) => withOrigin(exchangeCard(card, along), beads, trials))
    .toSorted(byNumber);
  return { trials, cards };
}

/** What a card was made from is known by its number, which means something else in another shop. */
function withOrigin(
  card: ExchangeCard,
  beads: readonly { readonly number: number }[],
  trials: readonly { readonly number: number }[],
): ExchangeCard {
  const { from } = card.content;
  const there = from?.kind === "bead" ? beads : trials;
  if (from === null || there.some(({ number }) => number === from.number)) return card;
  return { ...card, content: { ...card.content, from: null } };
}
