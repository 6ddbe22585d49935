import {
  archiveOf,
  jobsAlong,
  MOST_ARCHIVE_BEADS,
  seriesAlong,
  tooMany,
  type ArchiveRefusal,
} from "@/lib/archive";
import type { BeadRecord } from "@/lib/beads";
import { db, photoPlace } from "@/lib/db";
import { noJobs, type JobsAlong, type SeriesAlong } from "@/lib/exchange";
import { countBeads, filterQuery } from "@/lib/find";
import { assessContext } from "@/lib/shop";
import { slicesAsked, type BeadsAsked } from "./tables";
import type { Work } from "./words";

export interface ArchiveAsked extends BeadsAsked {
  /** Whether whoever asks may read jobs. */
  readonly seesJobs: boolean;
}

/** What is known of an archive before its first byte: its name and length, or why there is none. */
export type ArchiveHead =
  | { readonly ok: true; readonly name: string; readonly bytes: number }
  | { readonly ok: false; readonly issues: readonly ArchiveRefusal[] };

const nothing = { next: async () => ({ value: undefined, done: true as const }) };

/** One bead, a job whole, a trial or card with its beads, or whatever fits, with original photos and checksums. */
export const archive: Work<ArchiveAsked, ArchiveHead> = async (asked) => {
  const { found } = await countBeads(db(), asked.filter, asked.scope);
  const many = asked.picked.size === 0 ? found : Math.min(found, asked.picked.size);
  const beads = many > MOST_ARCHIVE_BEADS ? [] : await beadsOf(asked);
  const along = await jobAsked(asked, beads);
  const { shopSets } = await assessContext(db());
  const series = await seriesAsked(asked, beads);
  const made =
    many > MOST_ARCHIVE_BEADS
      ? tooMany(many, 0)
      : await archiveOf(photoPlace(), beads, shopSets, along, series);
  if (!made.ok) return { head: made, parts: nothing };
  const { bytes, parts } = made.value;
  return { head: { ok: true, bytes, name: fileName(asked, along, beads, series) }, parts: parts() };
};

/** As many as one archive holds are in memory, because its manifest names them all; their photos are not. */
async function beadsOf(asked: BeadsAsked): Promise<readonly BeadRecord[]> {
  const beads: BeadRecord[] = [];
  for await (const slice of slicesAsked(asked)) beads.push(...slice.map(({ bead }) => bead));
  return beads;
}

/** A job goes along, with its inspections and signed records, where all its beads do. */
async function jobAsked(
  { filter, seesJobs }: ArchiveAsked,
  beads: readonly BeadRecord[],
): Promise<JobsAlong> {
  if (!filter.job || !seesJobs) return noJobs;
  const along = await jobsAlong(db(), photoPlace(), [filter.job]);
  const found = new Set(beads.map(({ id }) => id));
  return along.jobs.every((job) => job.beads.every(({ beadId }) => found.has(beadId))) ? along : noJobs;
}

/** Somebody else's trial stays where it is, though a bead of it is exported. */
function seriesAsked(
  { filter, scope, picked }: BeadsAsked,
  beads: readonly BeadRecord[],
): Promise<SeriesAlong> {
  const { welderId } = scope;
  return seriesAlong(db(), beads, {
    all: welderId === undefined && picked.size === 0 && filterQuery(filter) === "",
    only: filter.trial ?? filter.card,
    maySee: (personId) => welderId === undefined || personId === null || personId === welderId,
  });
}

function fileName(
  { filter }: BeadsAsked,
  { jobs }: JobsAlong,
  beads: readonly BeadRecord[],
  { trials, cards }: SeriesAlong,
): string {
  if (jobs[0]) return `toeline-job-${jobs[0].number}.zip`;
  if (filter.trial && trials[0]) return `toeline-trial-${trials[0].number}.zip`;
  if (filter.card && cards[0]) return `toeline-card-${cards[0].number}.zip`;
  return beads.length === 1 ? `toeline-bead-${beads[0]?.number}.zip` : "toeline-beads.zip";
}
