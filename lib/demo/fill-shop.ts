import { existsSync } from "node:fs";
import path from "node:path";
import { createBead, saveBead } from "@/lib/beads";
import { exampleSetups } from "@/lib/setup";
import { saveSetup } from "@/lib/shop";
import type { Pen } from "@/lib/store";
import { demoBeads, demoHandIns, demoJobWelds, demoSetups, type DemoBead } from "./beads";
import { addDemoClass, addDemoExercise, type DemoClass } from "./course";
import { addDemoPhoto, demoTruth, set, type Store } from "./demo-picture";
import { demoContent } from "./demo-content";
import { addDemoJob } from "./job";
import { addDemoLimits } from "./limits";
import { daysAgo, made } from "./made";

/** Beads filled in so far, by picture. */
type Filled = Map<string, { readonly beadId: string; readonly welderId: string }>;

async function addDemoBead(
  { pen, dataDir }: Store,
  bead: DemoBead,
  { personIds }: DemoClass,
  filled: Filled,
): Promise<void> {
  const truth = await demoTruth(bead.picture);
  const welderId = personIds.get(bead.welder);
  if (welderId === undefined) throw new Error(`nobody called ${bead.welder}`);
  const previousId = bead.after && filled.get(bead.after.picture)?.beadId;
  const { id, revision } = made(
    await createBead(pen, {
      title: bead.title,
      welder: bead.welder,
      welderId,
      createdAt: daysAgo(bead.daysAgo),
      ...(previousId ? { previousId } : {}),
    }),
  );
  filled.set(bead.picture, { beadId: id, welderId });
  const photoId = await addDemoPhoto({ pen, dataDir }, id, bead.picture);
  made(await saveBead(pen, id, revision, demoContent(bead, truth, photoId)));
}

/**
 * Fills an empty database with the demo shop, through the same rooms a person's records go through. `dataDir`: the
 * folder whose photos the database speaks of.
 */
export async function fillDemoShop(pen: Pen, dataDir: string): Promise<void> {
  // In the order they were run, so that their numbers count up with the days.
  const there = demoBeads
    .filter(({ picture }) => existsSync(path.join(set, `${picture}.jpg`)))
    .toSorted((a, b) => b.daysAgo - a.daysAgo);
  await addDemoLimits(pen);
  const people = await addDemoClass(pen);
  const filled: Filled = new Map();
  for (const bead of there) await addDemoBead({ pen, dataDir }, bead, people, filled);
  const [answered, waiting] = [filled.get(demoHandIns.answered), filled.get(demoHandIns.waiting)];
  if (answered && waiting)
    await addDemoExercise(pen, people.groupId, { answered: answered.beadId, waiting: waiting.beadId });
  const [first, second] = [filled.get(demoJobWelds.first), filled.get(demoJobWelds.second)];
  if (first && second) await addDemoJob(pen, first, second);
  for (const { name, id } of demoSetups) {
    const example = exampleSetups.find((one) => one.id === id);
    if (example) await saveSetup(pen, name, example.setup);
  }
}
