import { rmSync } from "node:fs";
import path from "node:path";
import { viewSealsIn, workNow } from "@/lib/beads";
import { rowsOf, sql, type Db } from "@/lib/db";
import { dropViews, photoSizes, remakeViews, setAside, sweepIncoming, type PhotoSize } from "@/lib/photo";
import { logParts } from "@/lib/store";
import { ASIDE_FOLDERS, checkData, unfinished } from "./check-data";
import { canMend, type DataIssue, type OwnDataIssue } from "./issue";

/** What was found, what of it is gone after mending, and what stays. */
export interface Mended {
  readonly mended: readonly DataIssue[];
  readonly left: readonly DataIssue[];
}

/**
 * Puts right what can be put right without losing or inventing anything, and looks again. Nobody may serve the folder.
 * What is not safe is left as it is: it is for a backup, or for a person.
 */
export async function mendData(db: Db, folder: string, now: Date): Promise<Mended> {
  const before = await checkData(db, folder, { isServed: false });
  await putAway(folder, before.filter(canMend) as readonly OwnDataIssue[], now);
  await remake(db, folder, before);
  await workOut(db, before);
  const left = await checkData(db, folder, { isServed: false });
  const stays = new Set(left.map(keyOf));
  return { mended: before.filter((one) => !stays.has(keyOf(one))), left };
}

const keyOf = ({ code, path: where }: DataIssue): string => `${code} ${where.join(" ")}`;

/** At each start: what a crash left is put aside or cleared away, and told. */
export async function collectStrays(db: Db, folder: string, now: Date): Promise<readonly OwnDataIssue[]> {
  const found = (await unfinished(db, folder)).filter(canMend);
  await putAway(folder, found, now);
  return found;
}

async function putAway(folder: string, found: readonly OwnDataIssue[], now: Date): Promise<void> {
  for (const { code, data } of found) {
    const sha256 = String(data["sha256"] ?? "");
    if (code === "stray-original") await setAside(folder, sha256, now);
    if (code === "stray-views") await dropViews(folder, sha256);
    if (code === "left-uploads") await sweepIncoming(folder, Infinity);
    if (code === "left-aside")
      for (const name of ASIDE_FOLDERS) rmSync(path.join(folder, name), { recursive: true, force: true });
  }
}

/** Derived pictures and what is noted beside them, of each photo where either is wrong. */
async function remake(db: Db, folder: string, found: readonly DataIssue[]): Promise<void> {
  const photos = new Set(
    found.flatMap(({ code, data }) =>
      code === "view-changed" || code === "meta-differs" ? [String(data["sha256"])] : [],
    ),
  );
  if (photos.size === 0) return;
  for (const [sha256, said] of await lastSeals(db, photos)) await remakeViews(folder, sha256, said);
}

/** What the log last said of the pictures of these photos; nothing of one that it never sealed. */
async function lastSeals(
  db: Db,
  photos: ReadonlySet<string>,
): Promise<ReadonlyMap<string, Partial<Record<PhotoSize, string>>>> {
  const said = new Map([...photos].map((sha256) => [sha256, {} as Partial<Record<PhotoSize, string>>]));
  for await (const part of logParts(db))
    for (const entry of part)
      for (const { sha256, size, digest } of viewSealsIn(entry)) {
        const own = said.get(sha256);
        if (own && Object.hasOwn(photoSizes, size)) own[size as PhotoSize] = digest;
      }
  return said;
}

/** Beads whose derived rows are stale or do not agree. */
async function workOut(db: Db, found: readonly DataIssue[]): Promise<void> {
  const numbers = found.flatMap(({ code, data }) =>
    code === "facts-differ" ? [Number(data["number"])] : [],
  );
  if (found.some(({ code }) => code === "facts-stale")) {
    const all = await rowsOf<{ number: unknown }>(db, sql`SELECT "number" FROM "BeadFacts"`);
    numbers.push(...all.map(({ number }) => Number(number)));
  }
  await workNow(db, [...new Set(numbers)]);
}
