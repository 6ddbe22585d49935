import fc from "fast-check";
import { beforeAll, expect, it } from "vitest";
import { createInspection, createJob, inspectionPage, listInspections } from "@/lib/jobs";
import { useFreshDb } from "../../setup/fresh-db";
import { inDepth } from "../../setup/in-depth";

const fresh = useFreshDb();
const jobs: string[] = [];

beforeAll(async () => {
  const { pen } = fresh();
  jobs.length = 0;
  for (const title of ["Frame", "Gate"]) {
    const made = await createJob(pen, { title });
    if (!made.ok) throw new Error("no job");
    jobs.push(made.value.id);
  }
  // In turn, so that the numbers of one job have gaps.
  for (let i = 0; i < 13; i += 1) await createInspection(pen, jobs[i % 3 === 0 ? 1 : 0]!);
});

/** Every page of a job, one after the other. */
async function pages(jobId: string, limit: number) {
  const all = [];
  let after: string | undefined;
  do {
    const page = await inspectionPage(fresh().db, jobId, { limit, after });
    if (!page) throw new Error("gone");
    if (all.length > 30) throw new Error("the pages do not end");
    all.push(page);
    after = page.next ?? undefined;
  } while (after !== undefined);
  return all;
}

it("pages of any size hold every inspection of the job once, newest first, and all but the last are full", async () => {
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 1, max: 14 }), fc.constantFrom(...jobs), async (limit, jobId) => {
      const found = await pages(jobId, limit);
      const whole = await listInspections(fresh().db, { jobId });
      expect(found.flatMap(({ inspections }) => inspections)).toEqual(whole);
      expect(found.slice(0, -1).every(({ inspections }) => inspections.length === limit)).toBe(true);
      expect(found.at(-1)?.inspections.length).toBeGreaterThan(0);
    }),
    { seed: 18, numRuns: inDepth(8, 40) },
  );
});

it("an inspection that is begun meanwhile moves no page", async () => {
  const { db, pen } = fresh();
  const first = await inspectionPage(db, jobs[0]!, { limit: 3 });
  const wanted = await inspectionPage(db, jobs[0]!, { limit: 3, after: first?.next ?? "" });
  await createInspection(pen, jobs[0]!);
  expect(await inspectionPage(db, jobs[0]!, { limit: 3, after: first?.next ?? "" })).toEqual(wanted);
});

it("begins after no inspection of another job, and after none that is not there", async () => {
  const { db } = fresh();
  const [other] = await listInspections(db, { jobId: jobs[1]! });
  expect(await inspectionPage(db, jobs[0]!, { limit: 3, after: other!.id })).toBeNull();
  expect(await inspectionPage(db, jobs[0]!, { limit: 3, after: "nowhere" })).toBeNull();
});
