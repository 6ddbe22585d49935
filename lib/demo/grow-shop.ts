import { assessBead, confirmedCounts, type Assessed, type BeadContent } from "@/lib/assess";
import { keepAssessed, photoColumn, type BeadRecord, type NewPhoto } from "@/lib/beads";
import { writeTogether, type Tx } from "@/lib/db";
import { assessContext, weighedByCounts, type ShopContext } from "@/lib/shop";
import { newId, writeLogs, type Pen } from "@/lib/store";
import { inventedContent, numbersFrom } from "./invented";

/** Beads that differ in more than name and day; the others are one of these again. */
const KINDS = 240;
const AT_ONCE = 200;
const MINUTE_MS = 60_000;

export interface Growth {
  readonly beads: number;
  readonly seed: number;
  /** When the last of them was run; they lie half an hour apart before it. */
  readonly until: Date;
  /** People who ran them, in turn; none: names on the sheet alone. */
  readonly welderIds?: readonly string[];
  /** Stored photos of 1600 by 1200 pixels, one for each bead in turn; none: the photo's row stands without a file. */
  readonly photos?: readonly NewPhoto[];
}

const NO_FILE: NewPhoto = { sha256: "0".repeat(64), format: "jpeg", bytes: 0, widthPx: 1600, heightPx: 1200 };

/**
 * Adds invented beads by the thousand, for measuring and for tests. The shortcut: a few hundred kinds of bead are assessed,
 * the others take over what was said of theirs, and a transaction holds two hundred. Everything that is written is what
 * saving each would have left (rows, seals, chain, facts), and the verifier finds nothing: a test holds it to that.
 */
export async function growShop(pen: Pen, growth: Growth): Promise<void> {
  const next = numbersFrom(growth.seed);
  const contents = Array.from({ length: Math.min(KINDS, growth.beads) }, () => inventedContent(next, "p"));
  const context = await contextAfter(pen, growth, contents);
  const facts = [{ ...NO_FILE, id: "p" }];
  const kinds = contents.map((content) => assessBead({ content, photos: facts }, context));
  const last = await pen.db.bead.findFirst({ orderBy: { number: "desc" }, select: { number: true } });
  const first = (last?.number ?? 0) + 1;
  for (let from = 0; from < growth.beads; from += AT_ONCE) {
    const count = Math.min(AT_ONCE, growth.beads - from);
    const numbers = Array.from({ length: count }, (_, i) => first + from + i);
    const beads = numbers.map((number) => grownBead(growth, kinds, number, first));
    linkTries(beads);
    await writeTogether(pen.db, (tx) => writeBeads(tx, pen.by, beads, context, growth), { timeout: 120_000 });
  }
}

/** What assessments will rest on when all of them are there: the cases they confirm weigh on the causes of each. */
async function contextAfter(
  pen: Pen,
  { beads }: Growth,
  contents: readonly BeadContent[],
): Promise<ShopContext> {
  const now = await assessContext(pen.db);
  const judgements = Array.from({ length: beads }, (_, i) => contents[i % contents.length]!.judgement);
  // The first bead of a transaction has none before it.
  const grown = confirmedCounts(judgements.filter((_, i) => i % AT_ONCE !== 0));
  const known = Object.entries({ ...now.shopCounts, ...grown }).map(([cause]) => cause as keyof typeof grown);
  const sum = known.map((cause) => [cause, (now.shopCounts[cause] ?? 0) + (grown[cause] ?? 0)]);
  const shopCounts = Object.fromEntries(sum) as typeof grown;
  return { ...now, shopCounts, weighedBy: weighedByCounts(shopCounts) };
}

type Grown = { -readonly [K in keyof Assessed<BeadRecord>]: Assessed<BeadRecord>[K] };

function grownBead(growth: Growth, kinds: readonly Assessed[], number: number, first: number): Grown {
  const kind = kinds[(number - first) % kinds.length];
  if (!kind) throw new Error("no kind of bead");
  const { welderIds = [], photos = [NO_FILE], until, beads } = growth;
  const at = until.getTime() - (first + beads - 1 - number) * 30 * MINUTE_MS;
  const createdAt = new Date(at).toISOString();
  const photoId = newId();
  const photo = photos[number % photos.length] ?? NO_FILE;
  const content = {
    ...kind.content,
    welder: welderIds.length === 0 ? `Bay ${1 + (number % 15)}` : null,
    photos: kind.content.photos.map((one) => ({ ...one, id: photoId })),
  };
  const { sha256, format, bytes, widthPx, heightPx } = photo;
  return {
    id: newId(),
    number,
    revision: 1,
    createdAt,
    updatedAt: createdAt,
    previous: null,
    welderId: welderIds[number % Math.max(1, welderIds.length)] ?? null,
    jobId: null,
    weldId: null,
    handInId: null,
    content,
    photos: [{ id: photoId, sha256, format, bytes, widthPx, heightPx, role: "face" }],
    assessment: kind.assessment,
  };
}

/** A bead that says what a change did was run after the one before it. */
function linkTries(beads: readonly Grown[]): void {
  for (const [i, bead] of beads.entries()) {
    const before = beads[i - 1];
    if (!before || bead.content.judgement.tried === null) continue;
    bead.previous = { id: before.id, number: before.number, title: before.content.title };
  }
}

async function writeBeads(
  tx: Tx,
  by: string,
  beads: readonly Grown[],
  context: ShopContext,
  { photos = [] }: Growth,
): Promise<void> {
  await tx.bead.createMany({
    data: beads.map(({ id, number, createdAt, updatedAt, previous, welderId, content }) => ({
      id,
      number,
      createdAt: new Date(createdAt),
      updatedAt: new Date(updatedAt),
      title: content.title,
      welder: content.welder,
      setup: content.setup,
      judgement: content.judgement,
      welderId,
      previousId: previous?.id ?? null,
    })),
  });
  await tx.photo.createMany({ data: beads.flatMap(photoRows) });
  await keepAssessed(tx, beads, context);
  const viewsOf = new Map(photos.map(({ sha256, views }) => [sha256, views ?? []]));
  await writeLogs(
    tx,
    beads.map(({ id, number, photos: [photo] }) => {
      const sha256 = photo?.sha256 ?? "";
      const detail = { number, sha256, views: viewsOf.get(sha256) ?? [] };
      return { by, subject: `bead:${id}`, action: "bead.made", detail };
    }),
  );
}

const photoRows = (bead: Grown) =>
  bead.photos.map((photo, place) => ({
    ...photo,
    beadId: bead.id,
    place,
    drawing: photoColumn(bead.content.photos[place]!),
  }));
