import { beforeAll, expect, it } from "vitest";
import {
  createInspection,
  createJob,
  getInspection,
  getJob,
  newestOpen,
  saveInspection,
  saveJob,
} from "@/lib/jobs";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();

async function inspection(): Promise<string> {
  const { db, pen } = fresh();
  const made = await createJob(pen, { title: "Frame" });
  if (!made.ok) throw new Error("no job");
  const job = (await getJob(db, made.value.id))!;
  const welds = ["W1", "W2", "W3"].map((number) => ({ id: number.toLowerCase(), number }));
  await saveJob(pen, job.id, job.revision, { ...job.content, welds });
  const begun = await createInspection(pen, job.id);
  if (!begun.ok) throw new Error("no inspection");
  return begun.value.id;
}

let ids: string[] = [];
beforeAll(async () => {
  ids = [];
  for (let i = 0; i < 4; i += 1) ids.push(await inspection());
  const { db, pen } = fresh();
  const second = (await getInspection(db, ids[1]!))!;
  const [first, ...others] = second.draft.welds;
  const welds = [{ ...first!, seen: { kind: "percent", percent: 100 } }, ...others];
  const saved = await saveInspection(pen, ids[1]!, second.revision, { ...second.draft, welds });
  if (!saved.ok) throw new Error(JSON.stringify(saved.issues));
  // What signing does to a draft; the signing itself has tests of its own.
  const third = await db.inspection.findUniqueOrThrow({ where: { id: ids[2]! } });
  await db.inspection.update({
    where: { id: ids[2]! },
    data: { draft: { ...(third.draft as object), open: false } },
  });
});

it("holds what is not signed, the newest first, and no more than asked for", async () => {
  const numbers = async (most: number) => (await newestOpen(fresh().db, most)).map(({ number }) => number);
  expect(await numbers(9)).toEqual([4, 2, 1]);
  expect(await numbers(2)).toEqual([4, 2]);
});

it("says of how many welds nobody said yet how much was seen", async () => {
  const [newest, second] = await newestOpen(fresh().db, 2);
  expect(newest).toMatchObject({ welds: 3, unseen: 3 });
  expect(second).toMatchObject({ welds: 3, unseen: 2 });
});
