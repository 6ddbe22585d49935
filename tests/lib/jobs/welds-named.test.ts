import { expect, it } from "vitest";
import { createBead, getBeads } from "@/lib/beads";
import { JobContentSchema } from "@/lib/inspect";
import { attachBead, createJob, weldsNamed } from "@/lib/jobs";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();

function value<T>(result: { readonly ok: true; readonly value: T } | { readonly ok: false }): T {
  if (!result.ok) throw new Error("refused");
  return result.value;
}

it("each bead is named by its own job and weld, as the drawing writes it; one on none is not named", async () => {
  const { pen } = fresh();
  const job = (title: string, ...numbers: string[]) =>
    JobContentSchema.parse({ title, welds: numbers.map((number, i) => ({ id: `w${i + 1}`, number })) });
  const first = value(await createJob(pen, job("Bracket", "W-07", "W-08")));
  const second = value(await createJob(pen, job("Frame", "A1")));
  const beadIds: string[] = [];
  for (const to of [
    { jobId: first.id, weldId: "w2" },
    { jobId: second.id, weldId: "w1" },
    null,
    { jobId: first.id, weldId: "w1" },
  ]) {
    const { id } = value(await createBead(pen, {}));
    if (to) value(await attachBead(pen, id, to));
    beadIds.push(id);
  }
  const named = await weldsNamed(pen.db, await getBeads(pen.db, beadIds));
  expect(beadIds.map((id) => named.get(id) ?? null)).toEqual([
    { job: first.number, weld: "W-08" },
    { job: second.number, weld: "A1" },
    null,
    { job: first.number, weld: "W-07" },
  ]);
  expect((await weldsNamed(pen.db, [])).size).toBe(0);
});
