import { beforeAll, expect, it } from "vitest";
import { emptyBeadJudgement, type Outcome } from "@/lib/assess";
import { createBead, saveBead } from "@/lib/beads";
import { openChanges } from "@/lib/find";
import { useFreshDb } from "../../setup/fresh-db";

const fresh = useFreshDb();
const tried = { causeId: "polarity-wrong", sentence: "Swap the leads.", step: "" };

async function bead(title: string, day: number, judged: { tried?: typeof tried; outcome?: Outcome }) {
  const made = await createBead(fresh().pen, { title, createdAt: new Date(Date.UTC(2026, 10, day)) });
  if (!made.ok) throw new Error("no bead");
  const judgement = { ...emptyBeadJudgement, ...judged };
  const saved = await saveBead(fresh().pen, made.value.id, 1, { ...made.value.content, judgement });
  if (!saved.ok) throw new Error("not saved");
}

beforeAll(async () => {
  await bead("Without a change", 1, {});
  await bead("Cured", 2, { tried, outcome: "cured" });
  await bead("Open, older", 3, { tried });
  await bead("No difference", 4, { tried, outcome: "no-difference" });
  await bead("Open, newer", 5, { tried });
});

it("holds the beads with a change of which nobody said what it did, newest first, and no more than asked for", async () => {
  const { db } = fresh();
  const titles = async (most: number, scope = {}) =>
    (await openChanges(db, scope, most)).map(({ title }) => title);
  expect(await titles(3)).toEqual(["Open, newer", "Open, older"]);
  expect(await titles(1)).toEqual(["Open, newer"]);
  expect(await titles(3, { welderId: "somebody" })).toEqual([]);
});
