import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { archiveOf } from "@/lib/archive";
import { getBeads } from "@/lib/beads";
import { openDb } from "@/lib/db";
import { JobContentSchema } from "@/lib/inspect";
import { createJob } from "@/lib/jobs";
import { installationSigner } from "@/lib/keys";
import { addPerson } from "@/lib/roster";
import { layMigrated } from "../setup/migrated";
import { smallBead } from "../setup/small-shop";
import { bytesOf } from "../setup/stored-beads";
import { keyOf, PASSPHRASE } from "../setup/whole-record";
import type { Prepared, PreparedArchive } from "./deeds";

function value<T>(result: { ok: true; value: T } | { ok: false; issues: unknown }): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

/** Archives of three beads each, with photos, out of a folder of their own. */
async function makeArchives(folder: string, count: number): Promise<readonly PreparedArchive[]> {
  mkdirSync(folder, { recursive: true });
  await layMigrated(path.join(folder, "toeline.db"));
  const db = openDb(`file:${path.join(folder, "toeline.db")}`);
  const archives: PreparedArchive[] = [];
  try {
    for (let i = 0; i < count; i += 1) {
      const beads: string[] = [];
      for (let j = 0; j < 3; j += 1)
        beads.push((await smallBead({ db, by: "test" }, folder, 500 + 3 * i + j)).id);
      const write = async (name: string, ids: readonly string[]) => {
        const file = path.join(folder, `${name}-${i}.zip`);
        const archive = value(await archiveOf(folder, await getBeads(db, ids), []));
        writeFileSync(file, await bytesOf(archive));
        return file;
      };
      const halves = [await write("first", beads.slice(0, 1)), await write("rest", beads.slice(1))];
      archives.push({ file: await write("whole", beads), halves, beadIds: beads });
    }
  } finally {
    await db.$disconnect();
  }
  return archives;
}

/** A data folder in which a victim finds all that it needs; every victim gets a copy of it. */
export async function prepareVictim(root: string, archives: number): Promise<string> {
  const folder = path.join(root, "template");
  mkdirSync(folder, { recursive: true });
  await layMigrated(path.join(folder, "toeline.db"));
  const db = openDb(`file:${path.join(folder, "toeline.db")}`);
  const pen = { db, by: "test" };
  try {
    const inspector = value(await addPerson(pen, { name: "Vesna Ling", mark: "I-03", role: "inspector" }));
    await keyOf(pen, inspector.id);
    await installationSigner(pen, new Date());
    const job = JobContentSchema.parse({
      title: "Bracket",
      welds: [{ id: "w1", number: "W1", welderId: null }],
    });
    const prepared: Prepared = {
      beadId: (await smallBead(pen, folder, 1)).id,
      revision: 2,
      jobId: value(await createJob(pen, job)).id,
      inspectorId: inspector.id,
      passphrase: PASSPHRASE,
      archives: await makeArchives(path.join(root, "archives"), archives),
    };
    writeFileSync(path.join(folder, "prepared.json"), JSON.stringify(prepared));
  } finally {
    await db.$disconnect();
  }
  return folder;
}
