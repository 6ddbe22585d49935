import { type Here } from "@/app/_door/here";
import { routeFor } from "@/app/_door/route-for";
import { linesOf } from "@/lib/base";
import { dataDir } from "@/lib/db";
import { noJobs, type JobsAlong } from "@/lib/exchange";
import { archiveOf, archiveSentence, jobsAlong } from "@/lib/archive";
import type { BeadRecord } from "@/lib/beads";
import { askedBeads, download, type AskedBeads } from "../_asked/asked-beads";

export const dynamic = "force-dynamic";

const statuses = { "archive-empty": 404, "archive-too-many": 413, "archive-photo": 409 } as const;

/** One bead (`?id=`), a job whole (`?job=`) or whatever fits the filter, with original photos and checksums. */
export const GET = routeFor("data.export", async (now, request) => {
  const asked = await askedBeads(now, request, "data.export");
  if (asked instanceof Response) return asked;
  const beads = asked.found.map(({ bead }) => bead);
  const along = await jobAsked(now, asked, beads);
  const archive = await archiveOf(dataDir(), beads, asked.context.shopSets, along);
  if (!archive.ok) {
    const issues = linesOf(archive.issues, archiveSentence);
    return Response.json({ issues }, { status: statuses[archive.issues[0]?.code ?? "archive-empty"] });
  }
  return download(archive.value, "application/zip", fileName(along, beads));
});

/** A job goes along, with its inspections and signed records, where all its beads do. */
async function jobAsked(now: Here, { filter }: AskedBeads, beads: readonly BeadRecord[]): Promise<JobsAlong> {
  if (!filter.job || !now.may("job.read")) return noJobs;
  const along = await jobsAlong(now.db, dataDir(), [filter.job]);
  const found = new Set(beads.map(({ id }) => id));
  return along.jobs.every((job) => job.beads.every(({ beadId }) => found.has(beadId))) ? along : noJobs;
}

function fileName({ jobs }: JobsAlong, beads: readonly BeadRecord[]): string {
  if (jobs[0]) return `toeline-job-${jobs[0].number}.zip`;
  return beads.length === 1 ? `toeline-bead-${beads[0]?.number}.zip` : "toeline-beads.zip";
}
