/**
 * `npm run bench:grow -- [BEADS …]`: data folders of that many beads (1 000 and 10 000 unless said otherwise; 100 000 takes
 * some minutes to make), and what the things people wait for take on them. Beside each the very same SQL on the bare driver,
 * run in turn: medians of processor time. Only this run's machine is meant by the times.
 */
import { mkdtempSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Database from "better-sqlite3";
import sharp from "sharp";
import { applyMigrations } from "@/lib/cli/schema-engine.mjs";
import { archiveOf } from "@/lib/archive";
import { attachPhoto, createBead, getBead, saveBead, staleBeads, type NewPhoto } from "@/lib/beads";
import { openDb, type Db, type Sql } from "@/lib/db";
import { growShop } from "@/lib/demo/grow-shop";
import { beadTable, csvHead, csvRows, judgedCells } from "@/lib/exchange";
import { assessBead } from "@/lib/assess";
import {
  beadSlices,
  countBeads,
  findPage,
  openChanges,
  recordedChoices,
  trendCounts,
  type BeadFilter,
  type PageAt,
} from "@/lib/find";
import { summariseCard } from "@/lib/report";
import { assessContext } from "@/lib/shop";
import type { Pen } from "@/lib/store";
import { trendFigures } from "@/lib/trends";
import { metric } from "@/lib/units";

interface Folder {
  readonly path: string;
  readonly db: Db;
  readonly pen: Pen;
  /** The SQL that went through `db` since this was last emptied. */
  readonly asked: Sql[];
}

const median = (times: readonly number[]): number => times.toSorted((a, b) => a - b)[times.length >> 1] ?? 0;
const ms = (time: number): string => (time < 10 ? time.toFixed(1) : time.toFixed(0));

async function makeFolder(): Promise<Folder> {
  const folder = mkdtempSync(path.join(tmpdir(), "toeline-grow-"));
  const url = `file:${path.join(folder, "toeline.db")}`;
  await applyMigrations(url);
  const asked: Sql[] = [];
  const real = openDb(url);
  const db = new Proxy(real, {
    get(target, name, receiver) {
      const value: unknown = Reflect.get(target, name, receiver);
      if (name !== "$queryRaw") return value;
      return (query: Sql) => {
        asked.push(query);
        return target.$queryRaw(query);
      };
    },
  });
  return { path: folder, db, pen: { db: real, by: "owner" }, asked };
}

/** Three plain pictures: bytes to be stored and exported, nothing to look at. */
async function storePhotos({ db, path: dataDir }: Folder): Promise<readonly NewPhoto[]> {
  const photos: NewPhoto[] = [];
  for (const shade of [90, 120, 150]) {
    const create = {
      width: 1600,
      height: 1200,
      channels: 3 as const,
      background: { r: shade, g: 90, b: 60 },
    };
    const bytes = await sharp({ create }).jpeg().toBuffer();
    const one = async function* () {
      yield new Uint8Array(bytes);
    };
    await attachPhoto(db, { dataDir, source: one(), declaredBytes: bytes.length }, async (photo) => {
      photos.push(photo);
      return { ok: true, value: null };
    });
  }
  return photos;
}

/** What the list page does: counts, choices, a page, its cards in words. */
async function listPage(db: Db, filter: BeadFilter, at: PageAt): Promise<number> {
  const [{ weighedBy }, page] = await Promise.all([
    assessContext(db),
    findPage(db, filter, {}, { at, size: 48 }),
    countBeads(db, filter, {}),
    staleBeads(db),
    recordedChoices(db, {}),
  ]);
  const cards = page.beads.map((bead) =>
    summariseCard(
      bead,
      bead.said && { ...bead.said, adviceStands: bead.said.weighedBy === weighedBy },
      metric,
    ),
  );
  return cards.length;
}

interface Timed {
  readonly ours: number;
  readonly bare: number | null;
  readonly rows: number | null;
}

/** Processor time of this process: what else the machine does meanwhile is not ours. Waiting for the disk is not in it. */
function processorMs(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Ours and the same statements on the bare driver, in turn. */
async function time(
  folder: Folder,
  bare: Database.Database,
  work: () => Promise<unknown>,
  runs = 9,
): Promise<Timed> {
  const [ours, theirs]: [number[], number[]] = [[], []];
  let rows = 0;
  for (let run = 0; run < runs; run += 1) {
    folder.asked.length = 0;
    const from = processorMs();
    await work();
    ours.push(processorMs() - from);
    const statements = [...folder.asked];
    if (statements.length === 0) continue;
    const begin = processorMs();
    rows = 0;
    for (const { sql, values } of statements) rows += bare.prepare(sql).all(...values).length;
    theirs.push(processorMs() - begin);
  }
  return {
    ours: median(ours),
    bare: theirs.length ? median(theirs) : null,
    rows: theirs.length ? rows : null,
  };
}

async function csvBytes(db: Db): Promise<number> {
  const context = await assessContext(db);
  let bytes = csvHead(beadTable([]).columns).length;
  for await (const slice of beadSlices(db, {}, {})) {
    const beads = slice.map(({ bead, said }) => ({
      ...bead,
      judged:
        said?.weighedBy === context.weighedBy ? said.card.judged : judgedCells(assessBead(bead, context)),
    }));
    bytes += csvRows(beadTable(beads)).length;
  }
  return bytes;
}

async function archiveBytes({ db, path: dataDir }: Folder): Promise<number> {
  const beads = [];
  for await (const slice of beadSlices(db, { to: "2026-11-26", from: "2026-11-20" }, {}))
    beads.push(...slice.map(({ bead }) => bead));
  const archive = await archiveOf(dataDir, beads, []);
  let bytes = 0;
  if (archive.ok) for await (const part of archive.value.parts()) bytes += part.length;
  return bytes;
}

/** The works in the order of the table; each by its name. */
async function works(
  folder: Folder,
): Promise<readonly (readonly [string, () => Promise<unknown>, number])[]> {
  const { db, pen } = folder;
  const made = await createBead(pen, {});
  const id = made.ok ? made.value.id : "";
  const save = async (): Promise<void> => {
    const bead = await getBead(pen.db, id);
    if (bead) await saveBead(pen, id, bead.revision, { ...bead.content, title: `Saved ${bead.revision}` });
  };
  return [
    ["first page", () => listPage(db, {}, "start"), 9],
    ["filtered page", () => listPage(db, { joint: "tee", imperfection: "undercut" }, "start"), 9],
    ["word search", () => listPage(db, { q: "cold lap" }, "start"), 9],
    ["last page", () => listPage(db, {}, "end"), 9],
    ["what waits above it", () => openChanges(db, {}, 3), 9],
    [
      "trends",
      async () => trendFigures(await trendCounts(db, {}, {}, "welder"), { period: "week", most: 8 }),
      5,
    ],
    ["open a bead", () => getBead(db, id), 9],
    ["save a bead", save, 15],
    ["beads.csv", () => csvBytes(db), 1],
    ["archive of a week", () => archiveBytes(folder), 1],
    [
      "start: what is stale",
      async () => {
        await staleBeads(db);
        await assessContext(db);
      },
      5,
    ],
  ];
}

async function bench(beads: number): Promise<void> {
  const folder = await makeFolder();
  try {
    const from = performance.now();
    const photos = await storePhotos(folder);
    await growShop(folder.pen, { beads, seed: 1, until: new Date("2026-11-26T12:00:00Z"), photos });
    const bare = new Database(path.join(folder.path, "toeline.db"));
    // What SQLite needs to choose between indexes; the program's own start does the same.
    bare.pragma("optimize");
    const size = statSync(path.join(folder.path, "toeline.db")).size / 2 ** 20;
    console.log(
      `\n${beads} beads: made in ${((performance.now() - from) / 1000).toFixed(0)} s, database ${size.toFixed(0)} MB\n`,
    );
    console.log(
      "| work | ours, ms of processor | same SQL, bare driver | rows given | memory after, MB |\n| --- | --- | --- | --- | --- |",
    );
    for (const [name, work, runs] of await works(folder)) {
      const { ours, bare: theirs, rows } = await time(folder, bare, work, runs);
      const memory = (process.memoryUsage().rss / 2 ** 20).toFixed(0);
      console.log(
        `| ${name} | ${ms(ours)} | ${theirs === null ? "" : ms(theirs)} | ${rows ?? ""} | ${memory} |`,
      );
    }
    bare.close();
  } finally {
    await folder.db.$disconnect();
    rmSync(folder.path, { recursive: true, force: true });
  }
}

const sizes = process.argv
  .slice(2)
  .map(Number)
  .filter((n) => Number.isInteger(n) && n > 0);
for (const beads of sizes.length > 0 ? sizes : [1000, 10_000]) await bench(beads);
