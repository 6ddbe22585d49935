import { shopSetId } from "@/lib/accept";
import { canonicalJson } from "@/lib/base";
import { getBead, type BeadRecord } from "@/lib/beads";
import type { Db, Tx } from "@/lib/db";
import type { ArchiveManifest, ExchangeBead } from "@/lib/exchange";
import { getShopSet, tablesDigest } from "@/lib/shop";
import { exchangeBeads } from "./export-beads";
import { planJobs, type PlannedJob } from "./import-jobs";
import { planSeries, type PlannedSeries } from "./import-series";

/**
 * What would become of one bead of an archive.
 * - `new`: it is written; `number` is the one it gets here, which differs from its own where that is taken.
 * - `same`: the very same is here already; nothing is written.
 * - `differs`: here is a bead of this id with other content; nothing is written.
 * - `photo-taken`: a photo's id belongs to another bead here; nothing is written.
 */
export interface PlannedBead {
  readonly id: string;
  readonly title: string;
  readonly fate: "new" | "same" | "differs" | "photo-taken";
  readonly ownNumber: number;
  readonly number: number;
  readonly photos: number;
  readonly revision: number;
  readonly revisionHere: number | null;
}

/** A version of the shop's own limits that comes along: not here yet, here exactly so, or here as something else. */
export interface PlannedCriteria {
  readonly id: string;
  readonly title: string;
  readonly fate: "new" | "same" | "differs";
}

export interface ImportPlan {
  readonly beads: readonly PlannedBead[];
  readonly criteria: readonly PlannedCriteria[];
  readonly jobs: readonly PlannedJob[];
  readonly series: readonly PlannedSeries[];
  /** Beads; jobs, trials and cards are counted by themselves, but for those in the way, which are among the conflicts. */
  readonly fresh: number;
  readonly same: number;
  readonly conflicts: number;
  readonly renumbered: number;
  /** The archive was made by a version with other tables: verdicts may read differently here. */
  readonly otherTables: boolean;
}

/** Numbers and the pointer back belong to the shop a bead lies in; all else makes it the same bead or another. */
function essence({ number: _number, previous: _previous, ...rest }: ExchangeBead): string {
  return canonicalJson(rest);
}

/** What comes of a bead: `record` is what lies here under its id, `takenPhotos` the photos that others have. */
function fateOf(
  bead: ExchangeBead,
  record: BeadRecord | undefined,
  takenPhotos: ReadonlySet<string>,
): PlannedBead["fate"] {
  if (record)
    return exchangeBeads([record]).some((one) => essence(one) === essence(bead)) ? "same" : "differs";
  return bead.photos.some(({ id }) => takenPhotos.has(id)) ? "photo-taken" : "new";
}

/** Compares an archive with what is here; nothing is written. */
export async function planImport(db: Db | Tx, manifest: ArchiveManifest): Promise<ImportPlan> {
  const here = new Map<string, BeadRecord>();
  for (const { id } of manifest.beads) {
    const record = await getBead(db as Db, id);
    if (record) here.set(id, record);
  }
  const takenPhotos = await photosElsewhere(db, manifest.beads);
  const taken = await takenNumbers(db, manifest.beads);
  const fates = manifest.beads.map((bead) => ({ bead, fate: fateOf(bead, here.get(bead.id), takenPhotos) }));
  const numbers = newNumbers(
    fates.flatMap(({ bead, fate }) => (fate === "new" ? [bead] : [])),
    taken,
  );
  const beads = fates.map(({ bead, fate }): PlannedBead => ({
    id: bead.id,
    title: bead.content.title,
    fate,
    ownNumber: bead.number,
    number: numbers.get(bead.id) ?? here.get(bead.id)?.number ?? bead.number,
    photos: bead.photos.length,
    revision: bead.revision,
    revisionHere: here.get(bead.id)?.revision ?? null,
  }));
  const count = (...fated: PlannedBead["fate"][]): number =>
    beads.filter(({ fate }) => fated.includes(fate)).length;
  const jobs = await planJobs(db, manifest);
  const series = await planSeries(db, manifest);
  return {
    beads,
    criteria: await planCriteria(db, manifest),
    jobs,
    series,
    fresh: count("new"),
    same: count("same"),
    conflicts:
      count("differs", "photo-taken") + [...jobs, ...series].filter(({ fate }) => fate === "differs").length,
    renumbered: beads.filter(({ fate, number, ownNumber }) => fate === "new" && number !== ownNumber).length,
    otherTables: manifest.tablesDigest !== tablesDigest(),
  };
}

/**
 * Of the numbers that beads come with, those that are taken, and the highest of all. A deleted bead keeps its number: it may
 * come back, and its sheets are about.
 */
async function takenNumbers(
  db: Db | Tx,
  beads: readonly ExchangeBead[],
): Promise<{ readonly taken: ReadonlySet<number>; readonly highest: number }> {
  const newest = { orderBy: { number: "desc" }, select: { number: true } } as const;
  const [bead, deleted] = [await db.bead.findFirst(newest), await db.deletedBead.findFirst(newest)];
  const taken = new Set<number>();
  for (const numbers of inSlices(beads.map(({ number }) => number))) {
    const asked = { where: { number: { in: [...numbers] } }, select: { number: true } };
    const rows = [...(await db.bead.findMany(asked)), ...(await db.deletedBead.findMany(asked))];
    for (const { number } of rows) taken.add(number);
  }
  return { taken, highest: Math.max(0, bead?.number ?? 0, deleted?.number ?? 0) };
}

/** As many at once as every database takes in one question. */
const SLICE = 500;

function* inSlices<T>(all: readonly T[]): Generator<readonly T[]> {
  for (let from = 0; from < all.length; from += SLICE) yield all.slice(from, from + SLICE);
}

async function planCriteria(
  db: Db | Tx,
  { criteria = [] }: ArchiveManifest,
): Promise<readonly PlannedCriteria[]> {
  const planned: PlannedCriteria[] = [];
  for (const set of criteria) {
    const id = shopSetId(set);
    const here = await getShopSet(db, id);
    const fate =
      here === null ? "new" : canonicalJson(here.content) === canonicalJson(set) ? "same" : "differs";
    planned.push({ id, title: set.title, fate });
  }
  return planned;
}

/** A bead keeps its number where that is free; the others get the numbers after the highest of all. */
function newNumbers(
  fresh: readonly ExchangeBead[],
  { taken, highest }: { readonly taken: ReadonlySet<number>; readonly highest: number },
): ReadonlyMap<string, number> {
  const used = new Set(taken);
  const given = new Map<string, number>();
  for (const { id, number } of fresh) {
    if (used.has(number)) continue;
    used.add(number);
    given.set(id, number);
  }
  let next = fresh.reduce((most, { id }) => Math.max(most, given.get(id) ?? 0), highest) + 1;
  for (const { id } of fresh) if (!given.has(id)) given.set(id, next++);
  return given;
}

async function photosElsewhere(db: Db | Tx, beads: readonly ExchangeBead[]): Promise<ReadonlySet<string>> {
  const owner = new Map(beads.flatMap(({ id, photos }) => photos.map((photo) => [photo.id, id] as const)));
  const elsewhere = new Set<string>();
  for (const ids of inSlices([...owner.keys()])) {
    const asked = { where: { id: { in: [...ids] } }, select: { id: true, beadId: true } };
    for (const { id, beadId } of await db.photo.findMany(asked))
      if (owner.get(id) !== beadId) elsewhere.add(id);
  }
  return elsewhere;
}
