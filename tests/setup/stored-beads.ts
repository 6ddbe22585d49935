import type { Archive } from "@/lib/archive/export-beads";
import type { BeadRecord } from "@/lib/beads";
import type { Db } from "@/lib/db";
import { getBeads } from "@/lib/beads";

/** Every bead, newest first, whatever the kept facts say: for tests, which hold few. */
export async function listBeads(db: Db): Promise<readonly BeadRecord[]> {
  const rows = await db.bead.findMany({
    select: { id: true },
    orderBy: [{ createdAt: "desc" }, { number: "desc" }],
  });
  const beads: BeadRecord[] = [];
  for (let from = 0; from < rows.length; from += 100)
    beads.push(
      ...(await getBeads(
        db,
        rows.slice(from, from + 100).map(({ id }) => id),
      )),
    );
  return beads;
}

/** An archive as it would have been sent. */
export async function bytesOf(archive: Archive): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  for await (const part of archive.parts()) parts.push(part);
  const whole = Buffer.concat(parts);
  if (whole.length !== archive.bytes) throw new Error(`said ${archive.bytes} bytes, sent ${whole.length}`);
  return new Uint8Array(whole);
}
