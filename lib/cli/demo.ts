/** Fills an empty database with the demo shop, through the same rooms a person's beads go through. */
import { createReadStream, existsSync } from "node:fs";
import { readFile, stat } from "node:fs/promises";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { z } from "zod";
import { emptyBeadJudgement } from "@/lib/assess";
import { dataDir, databaseUrl, openDb } from "@/lib/db";
import { photoSentence, receivePhoto, sweepIncoming } from "@/lib/photo";
import {
  addPhoto,
  adoptUnlogged,
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
import { demoBeads, demoSetups, demoShop, type DemoBead } from "./demo-beads";
import { demoDrawing, DemoTruthSchema } from "./demo-drawing";

const FILLED = "demo.filled";
const set = fileURLToPath(new URL("../../demo-images/set", import.meta.url));

/** Ids of the beads filled in so far, by picture. */
const ids = new Map<string, string>();

async function addDemoBead(pen: Pen, bead: DemoBead): Promise<void> {
  const picture = path.join(set, `${bead.picture}.jpg`);
  const truth = DemoTruthSchema.parse(
    JSON.parse(await readFile(path.join(set, `${bead.picture}.json`), "utf8")),
  );
  const stored = await receivePhoto(dataDir(), createReadStream(picture), {
    declaredBytes: (await stat(picture)).size,
  });
  if (!stored.ok) throw new Error(stored.issues.map(photoSentence).join(" "));
  const setup = { ...truth.setup, ...bead.setup };
  const made = await createBead(pen, {
    title: bead.title,
    welder: bead.welder,
    createdAt: daysAgo(bead.daysAgo),
    ...previousOf(bead),
  });

  if (!made.ok) throw new Error(made.issues.map(recordSentence).join(" "));
  ids.set(bead.picture, made.value.id);
  const { sha256, format, bytes, widthPx, heightPx } = stored.value;
  const photo = await addPhoto(pen, made.value.id, { sha256, format, bytes, widthPx, heightPx }, "face");
  if (!photo.ok) throw new Error(photo.issues.map(recordSentence).join(" "));
  const saved = await saveBead(pen, made.value.id, made.value.revision, {
    title: bead.title,
    welder: bead.welder,
    setup,
    judgement: {
      ...emptyBeadJudgement,
      criteriaId: bead.criteriaId,
      lookedFor: [...bead.lookedFor],
      note: bead.note,
      tried: bead.after?.tried ?? null,
      outcome: bead.after?.outcome ?? null,
    },
    photos: [{ id: photo.value.record.id, role: "face", drawing: demoDrawing(truth) }],
  });
  if (!saved.ok) throw new Error(saved.issues.map(recordSentence).join(" "));
}

function previousOf(bead: DemoBead): { previousId?: string } {
  const previousId = bead.after && ids.get(bead.after.picture);
  return previousId ? { previousId } : {};
}

function daysAgo(days: number): Date {
  return new Date(Date.now() - days * 86_400_000);
}

const db = openDb(databaseUrl());
const pen: Pen = { db, by: "system" };
try {
  await sweepIncoming(dataDir());
  await adoptUnlogged(db);
  const filled = await readSetting(db, FILLED, z.boolean());
  if (!filled && (await db.bead.count()) === 0) {
    console.log(`  Filling the empty database with the demo shop (${demoShop}) …`);
    const there = demoBeads.filter(({ picture }) => existsSync(path.join(set, `${picture}.jpg`)));
    for (const bead of there) await addDemoBead(pen, bead);
    for (const { name, id } of demoSetups) {
      const example = exampleSetups.find((one) => one.id === id);
      if (example) await saveSetup(pen, name, example.setup);
    }
  }
  if (!filled) await writeSetting(pen, FILLED, true);
  await sealViews(db, dataDir());
} finally {
  await db.$disconnect();
}
