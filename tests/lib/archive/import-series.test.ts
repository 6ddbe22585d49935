import { createHash } from "node:crypto";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { strToU8, unzipSync, zipSync } from "fflate";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { archiveOf, checkArchive, importArchive, seriesAlong } from "@/lib/archive";
import { createBead, getBead } from "@/lib/beads";
import { CardSchema, proposeRanges } from "@/lib/cards";
import { verifyArchive } from "@/lib/cli/verify-archive";
import { openDb } from "@/lib/db";
import {
  beginByCard,
  beginRun,
  cardOfBead,
  createCard,
  createTrial,
  getCard,
  getTrial,
  listCards,
  retireCard,
  trialOfBead,
} from "@/lib/series";
import { verifyRecords } from "@/lib/verify";
import { useFreshDb, type FreshDb } from "../../setup/fresh-db";
import { layMigrated } from "../../setup/migrated";
import { bytesOf, listBeads } from "../../setup/stored-beads";
import { base, trialOf } from "../trials/simulated";

const fresh = useFreshDb();
const shops: FreshDb[] = [];
afterAll(async () => {
  for (const { db, folder } of shops) {
    await db.$disconnect();
    rmSync(folder, { recursive: true, force: true });
  }
});

async function emptyShop(): Promise<FreshDb> {
  const folder = mkdtempSync(path.join(tmpdir(), "toeline-shop-"));
  const url = `file:${path.join(folder, "toeline.db")}`;
  await layMigrated(url.slice("file:".length));
  const db = openDb(url);
  shops.push({ db, pen: { db, by: "test" }, folder, url });
  return shops.at(-1)!;
}

type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: readonly { code: string }[] };
function value<T>(result: Outcome<T>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

/** Everything of a shop, or these of its beads, with the trials and cards that go along. */
async function packed({ db, folder }: FreshDb, ids: readonly string[] | null = null): Promise<Uint8Array> {
  const beads = (await listBeads(db)).filter(({ id }) => ids === null || ids.includes(id));
  const series = await seriesAlong(db, beads, { all: ids === null });
  return bytesOf(value(await archiveOf(folder, beads, [], undefined, series)));
}
interface Manifest {
  schemaVersion: number;
  beads: { id: string; number: number }[];
  trials?: { id: string; number: number; runs: { place: number; beadId: string }[] }[];
  cards?: { id: string; number: number; content: { from: unknown }; beadIds: string[] }[];
}
const manifestOf = (bytes: Uint8Array): Manifest =>
  JSON.parse(Buffer.from(unzipSync(bytes)["manifest.json"]!).toString()) as Manifest;
/** The archive again with something changed in its list, and every checksum right. */
function changed(bytes: Uint8Array, change: (manifest: Manifest) => void): Uint8Array {
  const files = unzipSync(bytes);
  const manifest = manifestOf(bytes);
  change(manifest);
  const text = JSON.stringify(manifest);
  const digest = createHash("sha256").update(text).digest("hex");
  return zipSync({
    ...files,
    "manifest.json": strToU8(text),
    "manifest.json.sha256": strToU8(`${digest}  manifest.json\n`),
  });
}

const ids = { trial: "", card: "", unused: "", plain: "", first: "", second: "", byCard: "" };
let archive: Uint8Array;

beforeAll(async () => {
  const { pen, db } = fresh();
  ids.plain = value(await createBead(pen, { title: "Good lap" })).id;
  ids.trial = value(await createTrial(pen, trialOf(1), "somebody")).id;
  ids.first = value(await beginRun(pen, ids.trial, { place: 0, at: [] }, null)).beadId;
  ids.second = value(await beginRun(pen, ids.trial, { place: 2, at: [] }, null)).beadId;
  const from = { kind: "bead", number: (await getBead(db, ids.plain))!.number } as const;
  const card = CardSchema.parse({
    title: "Tee",
    setup: base,
    ranges: proposeRanges(base),
    code: "aws-d1-1",
    from,
    steel: { carbonPercent: 0.18, manganesePercent: 1.2 },
  });
  ids.card = value(await createCard(pen, card, "somebody")).id;
  ids.unused = value(await createCard(pen, { ...card, title: "Old tee", from: null }, null)).id;
  value(await retireCard(pen, ids.unused, new Date("2026-11-20T12:00:00Z")));
  ids.byCard = value(await beginByCard(pen, ids.card, null)).beadId;
  archive = await packed(fresh());
});

describe("trials and cards in an archive", () => {
  it("out, into an empty installation, out again: identical bytes, and everything verifies there", async () => {
    expect(manifestOf(archive)).toMatchObject({ schemaVersion: 8, trials: [{ id: ids.trial }] });
    expect(manifestOf(archive).cards!.map(({ id }) => id)).toEqual([ids.card, ids.unused]);
    const to = await emptyShop();
    const plan = value(await importArchive(to.pen, to.folder, archive));
    expect(plan.series.map(({ kind, fate }) => [kind, fate])).toEqual([
      ["trial", "new"],
      ["card", "new"],
      ["card", "new"],
    ]);
    expect(Buffer.compare(Buffer.from(await packed(to)), Buffer.from(archive))).toBe(0);
    expect(await trialOfBead(to.db, ids.second)).toMatchObject({ place: 2, trial: { id: ids.trial } });
    expect(await cardOfBead(to.db, ids.byCard)).toMatchObject({ id: ids.card });
    expect((await getCard(to.db, ids.unused))!.retiredAt).toBe("2026-11-20T12:00:00.000Z");
    expect((await verifyRecords(to.db, to.folder)).findings).toEqual([]);
    const entries = await to.db.logEntry.count();
    const again = value(await importArchive(to.pen, to.folder, archive));
    expect(again.series.every(({ fate }) => fate === "same")).toBe(true);
    expect(await to.db.logEntry.count()).toBe(entries);
  });

  it("leave the person behind", async () => {
    expect(Buffer.from(archive).toString("latin1")).not.toContain("somebody");
    const to = await emptyShop();
    await importArchive(to.pen, to.folder, archive);
    expect((await getTrial(to.db, ids.trial))!.personId).toBeNull();
  });

  it("are the same where they came from", async () => {
    const { db } = fresh();
    const plan = value(await checkArchive(db, archive));
    expect(plan).toMatchObject({ fresh: 0, conflicts: 0 });
    expect(plan.series.every(({ fate }) => fate === "same")).toBe(true);
  });

  it("say by themselves that they are there", () => {
    const folder = mkdtempSync(path.join(tmpdir(), "toeline-archive-"));
    const file = path.join(folder, "all.zip");
    writeFileSync(file, archive);
    expect(verifyArchive(file)).toMatchObject({ code: 0 });
    expect(verifyArchive(file).lines).toContain("1 trial and 2 procedure cards come along.");
    rmSync(folder, { recursive: true, force: true });
  });

  it("get free numbers where theirs are taken, and a card goes on naming the bead it was made from", async () => {
    const to = await emptyShop();
    value(await createBead(to.pen, { title: "Ours" }));
    value(await createTrial(to.pen, trialOf(2), null));
    const own = (await listCards(fresh().db)).find(({ id }) => id === ids.unused)!;
    value(await createCard(to.pen, own.content, null));
    const plan = value(await importArchive(to.pen, to.folder, archive));
    const number = plan.beads.find(({ id }) => id === ids.plain)!.number;
    expect(number).toBeGreaterThan(1);
    expect((await getCard(to.db, ids.card))!.content.from).toEqual({ kind: "bead", number });
    expect((await getTrial(to.db, ids.trial))!.number).toBe(2);
    expect((await verifyRecords(to.db, to.folder)).findings).toEqual([]);
    // Under their new numbers they are still the same.
    expect(value(await checkArchive(to.db, archive)).series.every(({ fate }) => fate === "same")).toBe(true);
  });

  it("come in two parts: the trial knows what was begun, and beads that come later find their trial and card", async () => {
    const { db } = fresh();
    const to = await emptyShop();
    value(await importArchive(to.pen, to.folder, await packed(fresh(), [ids.first])));
    expect(await listCards(to.db)).toEqual([]);
    expect((await getTrial(to.db, ids.trial))!.runs).toEqual((await getTrial(db, ids.trial))!.runs);
    // The bead it was made from stays behind, so its number says nothing there.
    expect(manifestOf(await packed(fresh(), [ids.byCard])).cards![0]!.content.from).toBeNull();
    value(await importArchive(to.pen, to.folder, await packed(fresh(), [ids.byCard])));
    expect((await getCard(to.db, ids.card))!.content.from).toBeNull();
    value(await importArchive(to.pen, to.folder, archive));
    expect(await trialOfBead(to.db, ids.second)).toMatchObject({ place: 2 });
    expect((await verifyRecords(to.db, to.folder)).findings).toEqual([]);
  });

  it("a bead that comes later is put under its card", async () => {
    const to = await emptyShop();
    value(
      await importArchive(
        to.pen,
        to.folder,
        changed(archive, (all) => {
          all.cards!.forEach((card) => (card.beadIds = []));
          all.beads = all.beads.filter(({ id }) => id !== ids.byCard);
        }),
      ),
    );
    expect((await getCard(to.db, ids.card))!.beadIds).toEqual([]);
    value(await importArchive(to.pen, to.folder, archive));
    expect((await getCard(to.db, ids.card))!.beadIds).toEqual([ids.byCard]);
    expect((await verifyRecords(to.db, to.folder)).findings).toEqual([]);
  });
});

describe("what is in the way", () => {
  let refusing: FreshDb;
  beforeAll(async () => {
    refusing = await emptyShop();
  });

  it("a trial that went on here is a conflict and stays as it is here", async () => {
    const to = await emptyShop();
    value(await importArchive(to.pen, to.folder, archive));
    value(await beginRun(to.pen, ids.trial, { place: 1, at: [] }, null));
    expect(await importArchive(to.pen, to.folder, archive)).toMatchObject({
      issues: [{ code: "import-conflicts", data: { conflicts: 1 } }],
    });
    value(await importArchive(to.pen, to.folder, archive, { leaveConflicts: true }));
    expect((await getTrial(to.db, ids.trial))!.runs).toHaveLength(3);
  });

  it("a trial of which a bead belongs to another trial here is left out", async () => {
    const to = await emptyShop();
    const own = value(await createTrial(to.pen, trialOf(2), null));
    await to.db.trialBead.create({ data: { trialId: own.id, place: 0, beadId: ids.first } });
    expect(value(await checkArchive(to.db, archive)).series[0]).toMatchObject({ fate: "differs" });
  });

  it.each([
    ["a place beyond its points", (all: Manifest) => (all.trials![0]!.runs[0]!.place = 29)],
    ["one place twice", (all: Manifest) => (all.trials![0]!.runs[1]!.place = 0)],
    ["one bead at two points", (all: Manifest) => (all.trials![0]!.runs[1]!.beadId = ids.first)],
    ["a card's bead that is not there", (all: Manifest) => (all.cards![0]!.beadIds = ["nowhere"])],
    ["a bead under two cards", (all: Manifest) => all.cards!.forEach((one) => (one.beadIds = [ids.first]))],
    ["a number that leaves no room", (all: Manifest) => (all.trials![0]!.number = 2 ** 31 - 1)],
    ["an id that is none", (all: Manifest) => (all.cards![0]!.id = "../x")],
  ])("%s is refused, and leaves nothing", async (_name, change) => {
    const { pen, db, folder } = refusing;
    const refused = await importArchive(pen, folder, changed(archive, change));
    expect(refused.ok ? [] : refused.issues.map(({ code }) => code)).toEqual(
      expect.arrayContaining([expect.stringMatching(/^(malformed|id-twice)$/)]) as string[],
    );
    expect(await db.trial.count()).toBe(0);
  });
});
