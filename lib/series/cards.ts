import { plannedBead } from "@/lib/assess";
import { fail, issue, ok, type Result } from "@/lib/base";
import { makeBead } from "@/lib/beads";
import { CardSchema, type Card } from "@/lib/cards";
import type { Db } from "@/lib/db";
import { newId, writing, type Pen, type RecordIssue } from "@/lib/store";

export interface CardRecord {
  readonly id: string;
  readonly number: number;
  readonly createdAt: string;
  readonly retiredAt: string | null;
  readonly personId: string | null;
  readonly content: Card;
  /** Beads run by it. */
  readonly beadIds: readonly string[];
}

type Row = {
  id: string;
  number: number;
  createdAt: Date;
  retiredAt: Date | null;
  personId: string | null;
  content: unknown;
  beads: { beadId: string }[];
};
const withBeads = { include: { beads: { orderBy: { beadId: "asc" }, select: { beadId: true } } } } as const;

const toCard = ({ id, number, createdAt, retiredAt, personId, content, beads }: Row): CardRecord => ({
  id,
  number,
  createdAt: createdAt.toISOString(),
  retiredAt: retiredAt?.toISOString() ?? null,
  personId,
  content: CardSchema.parse(content),
  beadIds: beads.map(({ beadId }) => beadId),
});

/** Every card, newest first: they are for everybody at the bench. */
export async function listCards(db: Db): Promise<readonly CardRecord[]> {
  return (await db.procedureCard.findMany({ orderBy: { number: "desc" }, ...withBeads })).map(toCard);
}

export async function getCard(db: Db, id: string): Promise<CardRecord | null> {
  const row = await db.procedureCard.findUnique({ where: { id }, ...withBeads });
  return row && toCard(row);
}

/** The card a bead was run by. */
export async function cardOfBead(db: Db, beadId: string): Promise<CardRecord | null> {
  const link = await db.cardBead.findUnique({ where: { beadId } });
  return link && getCard(db, link.cardId);
}

/** The same cards with no beads but those of `only`'s welder: a card is everybody's, the beads run by it are not. */
export async function withOwnBeads(
  db: Db,
  cards: readonly CardRecord[],
  only: { readonly welderId?: string },
): Promise<readonly CardRecord[]> {
  if (only.welderId === undefined) return cards;
  const rows = await db.bead.findMany({ where: { welderId: only.welderId }, select: { id: true } });
  const own = new Set(rows.map(({ id }) => id));
  return cards.map((card) => ({ ...card, beadIds: card.beadIds.filter((id) => own.has(id)) }));
}

/** A new card with the next running number. A card is never changed: a better one is another card. */
export async function createCard(
  pen: Pen,
  input: unknown,
  personId: string | null,
): Promise<Result<CardRecord, RecordIssue>> {
  const parsed = CardSchema.safeParse(input);
  if (!parsed.success) return fail(issue("card-not-understood"));
  return writing(pen, async (tx, log) => {
    const last = await tx.procedureCard.findFirst({ orderBy: { number: "desc" }, select: { number: true } });
    const number = (last?.number ?? 0) + 1;
    const row = await tx.procedureCard.create({
      data: { id: newId(), number, content: parsed.data, personId },
      ...withBeads,
    });
    await log(`card:${row.id}`, "card.made", { number });
    return ok(toCard(row));
  });
}

/** Takes a card out of use, or back into it (`null`). Beads run by it keep it. */
export async function retireCard(pen: Pen, id: string, at: Date | null): Promise<Result<null, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const { count } = await tx.procedureCard.updateMany({ where: { id }, data: { retiredAt: at } });
    if (count === 0) return fail(issue("card-gone"));
    await log(`card:${id}`, at ? "card.retired" : "card.back");
    return ok(null);
  });
}

/** Begins a bead by a card: its set-up as plan, and the card to be watched against. */
export async function beginByCard(
  pen: Pen,
  cardId: string,
  welderId: string | null,
): Promise<Result<{ readonly beadId: string }, RecordIssue>> {
  return writing(pen, async (tx, log) => {
    const row = await tx.procedureCard.findUnique({ where: { id: cardId }, ...withBeads });
    if (row === null) return fail(issue("card-gone"));
    const { content, number } = toCard(row);
    // What was read on the bead the card came from is not what this one is to be run with.
    const start = plannedBead({ ...content.setup, amps: null, arcTimeS: null });
    const made = await makeBead(tx, log, { ...start, welderId });
    if (!made.ok) return made;
    await tx.cardBead.create({ data: { beadId: made.value.id, cardId } });
    await log(`card:${cardId}`, "card.run-begun", { number, bead: made.value.number });
    return ok({ beadId: made.value.id });
  });
}
