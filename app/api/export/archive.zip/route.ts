import { dear } from "@/app/_door/dear-work";
import { type Here } from "@/app/_door/here";
import { routeFor } from "@/app/_door/route-for";
import { linesOf } from "@/lib/base";
import { photoPlace } from "@/lib/db";
import { noJobs, type JobsAlong, type SeriesAlong } from "@/lib/exchange";
import {
  archiveOf,
  archiveSentence,
  jobsAlong,
  MOST_ARCHIVE_BEADS,
  seriesAlong,
  tooMany,
} from "@/lib/archive";
import type { BeadRecord } from "@/lib/beads";
import { countBeads, filterQuery } from "@/lib/find";
import { assessContext } from "@/lib/shop";
import { askedBeads, download, slicesOf, type AskedBeads } from "../_asked/asked-beads";

export const dynamic = "force-dynamic";

const statuses = { "archive-empty": 404, "archive-too-many": 413, "archive-photo": 409 } as const;

/**
 * One bead (`?id=`), a job whole (`?job=`), a trial or card with its beads (`?trial=`, `?card=`) or whatever fits the filter,
 * with original photos and checksums. The trials and cards of its beads go along; where nothing is asked for, all of them.
 */
export const GET = routeFor(
  "data.export",
  dear(async (now, request) => {
    const asked = askedBeads(now, request, "data.export");
    if (asked instanceof Response) return asked;
    const { found } = await countBeads(now.db, asked.filter, asked.scope);
    const many = asked.picked.size === 0 ? found : Math.min(found, asked.picked.size);
    const beads = many > MOST_ARCHIVE_BEADS ? [] : await beadsOf(now, asked);
    const along = await jobAsked(now, asked, beads);
    const { shopSets } = await assessContext(now.db);
    const series = await seriesAsked(now, asked, beads);
    const archive =
      many > MOST_ARCHIVE_BEADS
        ? tooMany(many, 0)
        : await archiveOf(photoPlace(), beads, shopSets, along, series);
    if (!archive.ok) {
      const issues = linesOf(archive.issues, archiveSentence);
      return Response.json({ issues }, { status: statuses[archive.issues[0]?.code ?? "archive-empty"] });
    }
    const { bytes, parts } = archive.value;
    return download(parts(), "application/zip", fileName(asked, along, beads, series), bytes);
  }),
);

/** As many as one archive holds are in memory, because its manifest names them all; their photos are not. */
async function beadsOf(now: Here, asked: AskedBeads): Promise<readonly BeadRecord[]> {
  const beads: BeadRecord[] = [];
  for await (const slice of slicesOf(now, asked)) beads.push(...slice.map(({ bead }) => bead));
  return beads;
}

/** A job goes along, with its inspections and signed records, where all its beads do. */
async function jobAsked(now: Here, { filter }: AskedBeads, beads: readonly BeadRecord[]): Promise<JobsAlong> {
  if (!filter.job || !now.may("job.read")) return noJobs;
  const along = await jobsAlong(now.db, photoPlace(), [filter.job]);
  const found = new Set(beads.map(({ id }) => id));
  return along.jobs.every((job) => job.beads.every(({ beadId }) => found.has(beadId))) ? along : noJobs;
}

/** Somebody else's trial stays where it is, though a bead of it is exported. */
function seriesAsked(
  now: Here,
  { filter, scope, picked }: AskedBeads,
  beads: readonly BeadRecord[],
): Promise<SeriesAlong> {
  const { welderId } = scope;
  return seriesAlong(now.db, beads, {
    all: welderId === undefined && picked.size === 0 && filterQuery(filter) === "",
    only: filter.trial ?? filter.card,
    maySee: (personId) => welderId === undefined || personId === null || personId === welderId,
  });
}

function fileName(
  { filter }: AskedBeads,
  { jobs }: JobsAlong,
  beads: readonly BeadRecord[],
  { trials, cards }: SeriesAlong,
): string {
  if (jobs[0]) return `toeline-job-${jobs[0].number}.zip`;
  if (filter.trial && trials[0]) return `toeline-trial-${trials[0].number}.zip`;
  if (filter.card && cards[0]) return `toeline-card-${cards[0].number}.zip`;
  return beads.length === 1 ? `toeline-bead-${beads[0]?.number}.zip` : "toeline-beads.zip";
}
