/** Fills an empty database with the demo shop, through the same rooms a person's records go through. */
import { createReadStream, existsSync } from "node:fs";
import { readFile, stat } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { z } from "zod";
import { emptyBeadJudgement } from "@/lib/assess";
import { dataDir, databaseUrl, openDb } from "@/lib/db";
import { photoSentence, sweepIncoming } from "@/lib/photo";
import {
  addPhoto,
  adoptUnlogged,
  attachPhoto,
  createBead,
  readSetting,
  recordSentence,
  saveBead,
  saveSetup,
  sealViews,
  writeSetting,
  type Pen,
} from "@/lib/record";
import { exampleSetups } from "@/lib/setup";
import { demoBeads, demoHandIns, demoJobWelds, demoSetups, demoShop, type DemoBead } from "./demo-beads";
import { addDemoClass, addDemoExercise, type DemoClass } from "./demo-course";
import { demoDrawing, DemoTruthSchema } from "./demo-drawing";
import { addDemoJob } from "./demo-job";
import { addDemoLimits } from "./demo-limits";
import { daysAgo, made } from "./demo-made";

const FILLED = "demo.filled";
const set = fileURLToPath(new URL("../../demo-images/set", import.meta.url));

/** Beads filled in so far, by picture. */
type Filled = Map<string, { readonly beadId: string; readonly welderId: string }>;

async function addDemoBead(
  pen: Pen,
  bead: DemoBead,
  { personIds }: DemoClass,
  filled: Filled,
): Promise<void> {
  const truth = DemoTruthSchema.parse(
    JSON.parse(await readFile(path.join(set, `${bead.picture}.json`), "utf8")),
  );
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
  const drawing = demoDrawing(truth);
  const found = new Set(drawing.marks.map(({ imperfection }) => imperfection));
  made(
    await saveBead(pen, id, revision, {
      title: bead.title,
      welder: bead.welder,
      setup: { ...truth.setup, ...bead.setup },
      judgement: {
        ...emptyBeadJudgement,
        criteriaId: bead.criteriaId,
        lookedFor: bead.lookedFor.filter((one) => !found.has(one)),
        note: bead.note,
        tried: bead.after?.tried ?? null,
        outcome: bead.after?.outcome ?? null,
      },
      photos: [{ id: await addDemoPhoto(pen, id, bead.picture), role: "face", drawing }],
    }),
  );
}

/** The picture's id on the bead. */
async function addDemoPhoto(pen: Pen, beadId: string, name: string): Promise<string> {
  const file = path.join(set, `${name}.jpg`);
  const arriving = {
    dataDir: dataDir(),
    source: createReadStream(file),
    declaredBytes: (await stat(file)).size,
  };
  const taken = await attachPhoto(pen.db, arriving, (photo) => addPhoto(pen, beadId, photo, "face"));
  if (taken.ok) return taken.value.record.id;
  throw new Error(
    (taken.from === "photo" ? taken.issues.map(photoSentence) : taken.issues.map(recordSentence)).join(" "),
  );
}

async function fillShop(pen: Pen): Promise<void> {
  // In the order they were run, so that their numbers count up with the days.
  const there = demoBeads
    .filter(({ picture }) => existsSync(path.join(set, `${picture}.jpg`)))
    .toSorted((a, b) => b.daysAgo - a.daysAgo);
  await addDemoLimits(pen);
  const people = await addDemoClass(pen);
  const filled: Filled = new Map();
  for (const bead of there) await addDemoBead(pen, bead, people, filled);
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

const db = openDb(databaseUrl());
const pen: Pen = { db, by: "system" };
try {
  await sweepIncoming(dataDir());
  await adoptUnlogged(db);
  const filled = await readSetting(db, FILLED, z.boolean());
  if (!filled && (await db.bead.count()) === 0) {
    console.log(`  Filling the empty database with the demo shop (${demoShop}) …`);
    await fillShop(pen);
  }
  if (!filled) await writeSetting(pen, FILLED, true);
  await sealViews(db, dataDir());
} finally {
  await db.$disconnect();
}
