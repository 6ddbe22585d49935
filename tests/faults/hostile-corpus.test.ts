import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import path from "node:path";
import { Readable } from "node:stream";
import { fileURLToPath } from "node:url";
import sharp from "sharp";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { archiveOf, importArchive, importSentence } from "@/lib/archive";
import { getBeads } from "@/lib/beads";
import { archiveReport } from "@/lib/exchange";
import { nodeKeys } from "@/lib/keys";
import { checkData } from "@/lib/mend";
import { photoInventory, photoSentence, receivePhoto } from "@/lib/photo";
import { repacked } from "../setup/forge";
import { useFreshDb } from "../setup/fresh-db";
import { inDepth } from "../setup/in-depth";
import { smallBead } from "../setup/small-shop";
import { bytesOf } from "../setup/stored-beads";
import { chanceFrom, mutated, mutatedJson } from "./mutate";
import { processorMs } from "../setup/processor-time";

const SEED = 20261126;
const MOST_GROWTH = 400 * 2 ** 20;
/** Of processor, the slowest of them with room to spare; one that was made to be slow takes minutes. */
const MOST_MS = 30_000;

const fresh = useFreshDb();
const set = fileURLToPath(new URL("../../demo-images/set/", import.meta.url));
const fixtures = fileURLToPath(new URL("../fixtures/photos/", import.meta.url));

let photos: readonly Buffer[] = [];
let archives: readonly Buffer[] = [];
const before = process.memoryUsage().rss;

beforeAll(async () => {
  const render = sharp(readFileSync(path.join(set, "lap-cold-lap.jpg"))).resize(160);
  photos = await Promise.all([
    render.clone().jpeg({ quality: 80 }).toBuffer(),
    render
      .clone()
      .jpeg({ progressive: true })
      .withExif({ IFD0: { Copyright: "x".repeat(300) } })
      .toBuffer(),
    render.clone().png().toBuffer(),
    render.clone().webp().toBuffer(),
    render.clone().tiff({ compression: "lzw" }).toBuffer(),
  ]);
  photos = [...photos, readFileSync(path.join(fixtures, "plate-turned.heic"))];
  const { pen, folder, db } = fresh();
  const ids = [(await smallBead(pen, folder, 1)).id, (await smallBead(pen, folder, 2)).id];
  const made = await Promise.all(
    [ids.slice(0, 1), ids].map(async (some) => archiveOf(folder, await getBeads(db, some), [])),
  );
  archives = await Promise.all(
    made.map(async (one) => Buffer.from(await bytesOf(one.ok ? one.value : (undefined as never)))),
  );
});

/** Everything there is, to see that a refusal added nothing. */
async function counts(): Promise<string> {
  const { db, folder } = fresh();
  const { originals, views, incoming } = await photoInventory(folder);
  const rows = [
    db.bead.count(),
    db.photo.count(),
    db.job.count(),
    db.shopCriteria.count(),
    db.logEntry.count(),
  ];
  return JSON.stringify([await Promise.all(rows), originals.length, views.length, incoming.length]);
}

const sha256 = (of: Uint8Array | string): string => createHash("sha256").update(of).digest("hex");
const plainWords = /^[A-Z"0-9].{15,}[.!]$/s;

async function timed<T>(work: () => Promise<T>): Promise<T> {
  let answer: T | undefined;
  expect(await processorMs(async () => (answer = await work()))).toBeLessThan(MOST_MS);
  return answer as T;
}

describe("files that were made hostile", () => {
  it("photos are taken in whole or refused in a sentence, and a refused one leaves nothing", async () => {
    const { folder } = fresh();
    const many = inDepth(48, 1200);
    const fates: Record<string, number> = {};
    for (let i = 0; i < many; i += 1) {
      const bytes = mutated(photos, chanceFrom(SEED + i));
      const was = await counts();
      const answer = await timed(() =>
        receivePhoto(folder, Readable.from([bytes]), { declaredBytes: bytes.length || null }),
      );
      const fate = answer.ok ? "taken in" : answer.issues[0]!.code;
      fates[fate] = (fates[fate] ?? 0) + 1;
      if (answer.ok) continue;
      expect(photoSentence(answer.issues[0]!), `seed ${SEED + i}`).toMatch(plainWords);
      expect(await counts(), `seed ${SEED + i}`).toBe(was);
    }
    console.log(`photos, seeds from ${SEED}: ${JSON.stringify(fates)}`);
    expect(Object.keys(fates).length).toBeGreaterThan(2);
  });

  it("archives are imported whole or refused in a sentence, and a refused one leaves nothing", async () => {
    const { pen, folder, db } = fresh();
    const many = inDepth(40, 800);
    const fates: Record<string, number> = {};
    for (let i = 0; i < many; i += 1) {
      const chance = chanceFrom(SEED + 7 * i);
      const bytes =
        chance(3) === 0
          ? mutated(archives, chance)
          : Buffer.from(
              repacked(archives[chance(archives.length)]!, (manifest) => mutatedJson(manifest, chance)),
            );
      const was = await counts();
      const answer = await timed(() => importArchive(pen, folder, bytes));
      const fate = answer.ok ? "imported" : answer.issues[0]!.code;
      fates[fate] = (fates[fate] ?? 0) + 1;
      const { lines } = archiveReport(bytes, nodeKeys, sha256);
      expect(lines.length, `seed ${SEED + 7 * i}`).toBeGreaterThan(0);
      if (answer.ok) continue;
      expect(importSentence(answer.issues[0]!), `seed ${SEED + 7 * i}`).toMatch(plainWords);
      expect(await counts(), `seed ${SEED + 7 * i}`).toBe(was);
    }
    console.log(`archives, seeds from ${SEED}: ${JSON.stringify(fates)}`);
    expect(Object.keys(fates).length).toBeGreaterThan(3);
    const found = await checkData(db, folder, { isServed: true });
    expect(found).toEqual([]);
  });
});

afterAll(() => {
  expect(process.memoryUsage().rss - before).toBeLessThan(MOST_GROWTH);
});
