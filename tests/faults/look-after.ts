import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { openDb, type Db } from "@/lib/db";
import { checkData, collectStrays } from "@/lib/mend";
import { originalPath } from "@/lib/photo/paths";
import { readManifest } from "@/lib/backup/manifest";
import type { Deed, Prepared } from "./deeds";

export interface Acknowledged {
  readonly deed: Deed;
  readonly proof: string;
}

/**
 * What a folder lacks after its process was killed: acknowledged writes that are not there, half imports, whatever a start
 * would stumble over. Cleared of strays first, as a start does. Empty: all is well.
 */
export async function lookAfter(
  folder: string,
  acknowledged: readonly Acknowledged[],
): Promise<{ readonly wrong: readonly string[]; readonly strays: number }> {
  const prepared = JSON.parse(readFileSync(path.join(folder, "prepared.json"), "utf8")) as Prepared;
  const db = openDb(`file:${path.join(folder, "toeline.db")}`);
  try {
    const strays = await collectStrays(db, folder, new Date());
    const wrong: string[] = [];
    for (const one of acknowledged)
      if (!(await isThere(db, folder, one))) wrong.push(`lost: ${one.deed} ${one.proof}`);
    wrong.push(...(await lostSave(db, prepared, acknowledged)));
    for (const { file, beadIds } of prepared.archives) {
      const there = await db.bead.count({ where: { id: { in: [...beadIds] } } });
      const acked = acknowledged.some(({ proof }) => proof === file);
      if (acked ? there !== beadIds.length : there % beadIds.length !== 0)
        wrong.push(`half an import: ${there} of ${beadIds.length}`);
    }
    for (const { code, path: where } of await checkData(db, folder, { isServed: false }))
      wrong.push(`${code} ${where.join(" ")}`);
    return { wrong: [...wrong, ...halfBackups(folder)], strays: strays.length };
  } finally {
    await db.$disconnect();
  }
}

async function isThere(db: Db, folder: string, { deed, proof }: Acknowledged): Promise<boolean> {
  switch (deed) {
    case "make":
      return (await db.bead.count({ where: { id: proof } })) === 1;
    case "photo": {
      const row = await db.photo.findFirst({ where: { sha256: proof } });
      const original = originalPath(folder, proof);
      return row !== null && original !== null && readFileSync(original).length === row.bytes;
    }
    case "sign":
      return (await db.signedRevision.count({ where: { inspectionId: proof } })) === 1;
    case "backup":
      return readManifest(proof) !== null;
    // The last one counts, and is looked at by itself; imports by their beads.
    case "save":
    case "import":
      return true;
  }
}

/** Of the saves the last acknowledged one, or one that came after it. */
async function lostSave(db: Db, { beadId, revision }: Prepared, all: readonly Acknowledged[]) {
  const saves = all.filter(({ deed }) => deed === "save");
  const last = saves.at(-1);
  const bead = await db.bead.findUnique({ where: { id: beadId } });
  if (!last || bead === null) return last ? ["lost: the bead"] : [];
  const at = revision + saves.length;
  const stands = bead.revision === at ? bead.title === last.proof : bead.revision === at + 1;
  return stands ? [] : [`lost: save ${at} ${last.proof}, there is ${bead.revision} ${bead.title}`];
}

/** A copy whose folder has its own name is whole; what was cut off has another. */
function halfBackups(folder: string): readonly string[] {
  const name = path.basename(folder);
  return readdirSync(path.dirname(folder))
    .filter((one) => one.startsWith(`${name}-copy-`) && !one.endsWith(".part"))
    .filter((one) => readManifest(path.join(path.dirname(folder), one)) === null)
    .map((one) => `half a backup: ${one}`);
}
