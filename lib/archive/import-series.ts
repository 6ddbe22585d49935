import { canonicalJson } from "@/lib/base";
import type { Db, Tx } from "@/lib/db";
import type { ArchiveManifest, ExchangeCard, ExchangeTrial } from "@/lib/exchange";
import { getCard, getTrial } from "@/lib/series";
import { writeLog } from "@/lib/store";
import { exchangeCard, exchangeTrial } from "./export-series";
import { freeNumber } from "./import-jobs";

/** What would become of a trial or a card: as with beads. `differs` also where another trial here has one of its beads. */
export interface PlannedSeries {
  readonly kind: "trial" | "card";
  readonly id: string;
  readonly title: string;
  readonly fate: "new" | "same" | "differs";
  readonly ownNumber: number;
  readonly number: number;
}

/** Numbers belong to the shop a trial lies in. */
const essence = ({ number: _number, ...rest }: ExchangeTrial): string => canonicalJson(rest);

/** So do whether a card is in use, which beads were run by it here, and the number of what it was made from. */
function cardEssence({ id, createdAt, content }: ExchangeCard): string {
  const { from: _from, ...rest } = content;
  return canonicalJson({ id, createdAt, content: rest });
}

/** Compares trials and cards of an archive with what is here; nothing is written. */
export async function planSeries(
  db: Db | Tx,
  { trials = [], cards = [] }: ArchiveManifest,
): Promise<readonly PlannedSeries[]> {
  const select = { select: { number: true } } as const;
  const taken = {
    trial: new Set((await db.trial.findMany(select)).map(({ number }) => number)),
    card: new Set((await db.procedureCard.findMany(select)).map(({ number }) => number)),
  };
  const planned: PlannedSeries[] = [];
  const plan = (kind: PlannedSeries["kind"], one: ExchangeTrial | ExchangeCard, here: Here) => {
    const number = here.number ?? freeNumber(one.number, taken[kind]);
    if (here.fate === "new") taken[kind].add(number);
    const { id, content } = one;
    planned.push({ kind, id, title: content.title, fate: here.fate, ownNumber: one.number, number });
  };
  for (const trial of trials) plan("trial", trial, await trialHere(db, trial));
  for (const card of cards) plan("card", card, await cardHere(db, card));
  return planned;
}

interface Here {
  readonly fate: PlannedSeries["fate"];
  readonly number: number | null;
}

async function trialHere(db: Db | Tx, trial: ExchangeTrial): Promise<Here> {
  const here = await getTrial(db as Db, trial.id);
  if (here) {
    const same = essence(exchangeTrial(here)) === essence(trial);
    return { fate: same ? "same" : "differs", number: here.number };
  }
  const beadIds = trial.runs.map(({ beadId }) => beadId);
  const elsewhere = await db.trialBead.count({ where: { beadId: { in: beadIds } } });
  return { fate: elsewhere > 0 ? "differs" : "new", number: null };
}

async function cardHere(db: Db | Tx, card: ExchangeCard): Promise<Here> {
  const here = await getCard(db as Db, card.id);
  if (here === null) return { fate: "new", number: null };
  const same = cardEssence(exchangeCard(here, new Set())) === cardEssence(card);
  return { fate: same ? "same" : "differs", number: here.number };
}

/** What became of the beads of the archive, as far as trials and cards ask. */
export interface ArrivedBeads {
  /** Written now, or here already exactly so. */
  readonly here: ReadonlySet<string>;
  /** Of each number of the archive, the number here. */
  readonly numbers: ReadonlyMap<number, number>;
}

interface Writing {
  readonly by: string;
  /** SHA-256 of the archive, for the log. */
  readonly archive: string;
}

/** Writes the trials and cards that are new here, after the beads; and says of beads that came which card they were run by. */
export async function writeSeries(
  tx: Tx,
  { trials = [], cards = [] }: ArchiveManifest,
  planned: readonly PlannedSeries[],
  arrived: ArrivedBeads,
  writing: Writing,
): Promise<void> {
  const fates = new Map(planned.map((one) => [one.id, one]));
  const numbers = {
    bead: arrived.numbers,
    trial: new Map(planned.flatMap((one) => (one.kind === "trial" ? [[one.ownNumber, one.number]] : []))),
  };
  for (const trial of trials.filter(({ id }) => fates.get(id)?.fate === "new"))
    await writeTrial(tx, trial, fates.get(trial.id)!.number, writing);
  for (const card of cards) {
    const { fate, number } = fates.get(card.id)!;
    if (fate === "new") await writeCard(tx, card, number, numbers, writing);
    if (fate !== "differs") await placeUnder(tx, card, number, arrived.here, writing);
  }
}

async function writeTrial(
  tx: Tx,
  trial: ExchangeTrial,
  number: number,
  { by, archive }: Writing,
): Promise<void> {
  const { id, revision, content, createdAt, runs } = trial;
  await tx.trial.create({
    data: {
      ...{ id, number, revision, content },
      createdAt: new Date(createdAt),
      runs: { create: runs.map(({ place, beadId }) => ({ place, beadId })) },
    },
  });
  const detail = { number, ownNumber: trial.number, archive };
  await writeLog(tx, { by, subject: `trial:${id}`, action: "trial.imported", detail });
}

async function writeCard(
  tx: Tx,
  { id, number: ownNumber, content, createdAt, retiredAt }: ExchangeCard,
  number: number,
  numbers: Readonly<Record<"bead" | "trial", ReadonlyMap<number, number>>>,
  { by, archive }: Writing,
): Promise<void> {
  const { from } = content;
  const fromNumber = from && numbers[from.kind].get(from.number);
  const origin = from && fromNumber ? { ...from, number: fromNumber } : null;
  await tx.procedureCard.create({
    data: {
      ...{ id, number, content: { ...content, from: origin } },
      createdAt: new Date(createdAt),
      retiredAt: retiredAt && new Date(retiredAt),
    },
  });
  const detail = { number, ownNumber, archive };
  await writeLog(tx, { by, subject: `card:${id}`, action: "card.imported", detail });
}

/** A bead that is under another card here stays there. */
async function placeUnder(
  tx: Tx,
  { id: cardId, beadIds }: ExchangeCard,
  number: number,
  here: ReadonlySet<string>,
  { by, archive }: Writing,
): Promise<void> {
  const asked = beadIds.filter((one) => here.has(one));
  const under = await tx.cardBead.findMany({ where: { beadId: { in: asked } }, select: { beadId: true } });
  const free = asked.filter((one) => !under.some(({ beadId }) => beadId === one));
  if (free.length === 0) return;
  for (const beadId of free) await tx.cardBead.create({ data: { beadId, cardId } });
  const detail = { number, beads: free.length, archive };
  await writeLog(tx, { by, subject: `card:${cardId}`, action: "card.beads-imported", detail });
}
