import type { Db } from "@/lib/db";
import { toJob } from "./jobs";

/** Where a bead lies: the running number of its job, and its weld as the drawing names it ("W3"). */
export interface WeldNamed {
  readonly job: number;
  readonly weld: string | null;
}

interface OnWeld {
  readonly id: string;
  readonly jobId: string | null;
  readonly weldId: string | null;
}

/** Job and weld of those of these beads that lie on one, by the bead's id. */
export async function weldsNamed(db: Db, beads: readonly OnWeld[]): Promise<ReadonlyMap<string, WeldNamed>> {
  const asked = [...new Set(beads.flatMap(({ jobId }) => jobId ?? []))];
  if (asked.length === 0) return new Map();
  const rows = await db.job.findMany({ where: { id: { in: asked } } });
  const jobs = new Map(rows.map((row) => [row.id, toJob(row)]));
  return new Map(
    beads.flatMap(({ id, jobId, weldId }): [string, WeldNamed][] => {
      const job = jobId === null ? undefined : jobs.get(jobId);
      if (!job) return [];
      const weld = job.content.welds.find((one) => one.id === weldId);
      return [[id, { job: job.number, weld: weld?.number ?? null }]];
    }),
  );
}
