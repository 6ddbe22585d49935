/**
 * `npm run bench:grow -- [--postgresql] [--at URL] [--verify] [--list] [--keep FOLDER] [BEADS …]`: databases of that many
 * beads (1 000 and 10 000 unless said otherwise; 100 000 takes some minutes to make), and what the things people wait for take
 * on them. Beside each the very same SQL on the bare driver, run in turn: medians, on SQLite of processor time, on PostgreSQL,
 * which works elsewhere, of time; and how many rows PostgreSQL looks at. Only this run's machine is meant by the times.
 * `--keep`: a data folder on SQLite for each number stays in FOLDER, can be served, and is measured again the next time.
 * `--at URL --keep FOLDER`: a PostgreSQL of one's own, which stays; filled where it is empty. `--list`: the list with what
 * waits above it alone, as JSON, for `npm run bench`.
 */
import { existsSync, mkdirSync, renameSync, rmSync } from "node:fs";
import { loadavg } from "node:os";
import path from "node:path";
import { parseArgs } from "node:util";
import Database from "better-sqlite3";
import pg from "pg";
import { archiveOf } from "@/lib/archive";
import { applyMigrations } from "@/lib/cli/schema-engine.mjs";
import { createBead, getBead, saveBead, staleBeads } from "@/lib/beads";
import { engineOf, openDb, type Db, type Sql } from "@/lib/db";
import { growShop } from "@/lib/demo/grow-shop";
import { weldsNamed } from "@/lib/jobs";
import { beadTable, csvHead, csvRows, judgedCells } from "@/lib/exchange";
import { assessBead } from "@/lib/assess";
import {
  beadSlices,
  countSome,
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
import { verifyRecords } from "@/lib/verify";
import { freshDb } from "../../setup/fresh-db";
import { layMigrated } from "../../setup/migrated";
import { listenTo, rowsRead } from "../../setup/rows-read";
import { storePlainPhotos } from "../../setup/plain-photos";
import { setup as startPostgres } from "../../setup/postgres-global";

interface Folder {
  readonly path: string;
  readonly url: string;
  readonly db: Db;
  readonly pen: Pen;
  /** The SQL that went through `db` since this was last emptied. */
  readonly asked: Sql[];
}

const median = (times: readonly number[]): number => times.toSorted((a, b) => a - b)[times.length >> 1] ?? 0;
const ms = (time: number): string => (time < 10 ? time.toFixed(1) : time.toFixed(0));

/** The client itself, whose questions are listened to: whatever knows it by itself still does. */
function listened(path: string, url: string, real: Db): Folder {
  const asked = listenTo(real as never);
  return { path, url, db: real, pen: { db: real, by: "owner" }, asked };
}

async function makeFolder(): Promise<Folder> {
  const { db, folder, url } = await freshDb();
  return listened(folder, url, db);
}

/** The kept folder of so many beads, as an earlier run left it; made whole under another name first. */
async function keptFolder(keep: string, beads: number): Promise<Folder> {
  const folder = path.resolve(keep, `${beads}`);
  const making = `${folder}.making`;
  if (!existsSync(folder)) {
    rmSync(making, { recursive: true, force: true });
    mkdirSync(making, { recursive: true });
    await layMigrated(path.join(making, "toeline.db"));
    const one = openedIn(making);
    await fill(one, beads);
    await one.db.$disconnect();
    renameSync(making, folder);
  }
  return openedIn(folder);
}

function openedIn(folder: string): Folder {
  const url = `file:${path.join(folder, "toeline.db")}`;
  return listened(folder, url, openDb(url, folder));
}

/** A PostgreSQL that is there, and stays: filled where it has no beads yet. Photos lie in the kept folder. */
async function namedDatabase(url: string, keep: string, beads: number): Promise<Folder> {
  await applyMigrations(url);
  const one = listened(keep, url, openDb(url, keep));
  const there = await one.db.bead.count();
  if (there === 0) await fill(one, beads);
  else if (Math.abs(there - beads) > beads / 100)
    throw new Error(`there are ${there} beads in it, not ${beads}`);
  return one;
}

async function fill(folder: Folder, beads: number): Promise<void> {
  const isFile = engineOf(folder.db) === "sqlite";
  const from = performance.now();
  // What is made for measuring need not outlive a power cut.
  if (isFile) await folder.db.$queryRawUnsafe("PRAGMA synchronous = OFF");
  const photos = await storePlainPhotos(folder.db, folder.path);
  await growShop(folder.pen, { beads, seed: 1, until: new Date("2026-11-26T12:00:00Z"), photos });
  if (isFile) await folder.db.$queryRawUnsafe("PRAGMA synchronous = FULL");
  const seconds = ((performance.now() - from) / 1000).toFixed(0);
  console.error(`\n${beads} beads on ${engineOf(folder.db)} made in ${seconds} s`);
}

/** The driver by itself: how many rows a statement gives. */
interface Bare {
  rows(query: Sql): Promise<number>;
  /** Rows and entries of indexes that these statements looked at, as the database counts them; null: it does not say. */
  read(queries: readonly Sql[]): Promise<number | null>;
  close(): Promise<unknown>;
}

async function openBare({ db, path: folder, url }: Folder): Promise<Bare> {
  if (engineOf(db) === "postgresql") {
    const client = new pg.Client(url);
    await client.connect();
    await client.query("VACUUM ANALYZE");
    return {
      rows: async ({ text, values }) => (await client.query(text, values as unknown[])).rows.length,
      read: (queries) => rowsRead(client, queries),
      close: () => client.end(),
    };
  }
  const file = new Database(path.join(folder, "toeline.db"));
  // What SQLite needs to choose between indexes; the program's own start does the same.
  file.pragma("optimize");
  return {
    rows: async ({ sql, values }) => file.prepare(sql).all(...values).length,
    read: async () => null,
    close: async () => file.close(),
  };
}

/** What the list page does: counts, choices, a page, its cards in words. */
async function listPage(db: Db, filter: BeadFilter, at: PageAt): Promise<number> {
  const [{ weighedBy }, page] = await Promise.all([
    assessContext(db),
    findPage(db, filter, {}, { at, size: 48 }),
    countSome(db, filter, {}),
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
  readonly read: number | null;
}

/** Processor time of this process: what else the machine does meanwhile is not ours. Waiting for the disk is not in it. */
function spentMs(db: Db): number {
  if (engineOf(db) === "postgresql") return performance.now();
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Ours and the same statements on the bare driver, in turn. */
async function time(
  folder: Folder,
  bare: Bare,
  work: () => Promise<unknown>,
  runs = 9,
  isSave = false,
): Promise<Timed> {
  const [ours, theirs]: [number[], number[]] = [[], []];
  let rows = 0;
  let last: readonly Sql[] = [];
  for (let run = 0; run < runs; run += 1) {
    folder.asked.length = 0;
    const from = spentMs(folder.db);
    await work();
    ours.push(spentMs(folder.db) - from);
    // What a save asks in between is no measure of what it writes.
    const statements = isSave ? [] : [...folder.asked];
    if (statements.length === 0) continue;
    last = statements;
    const begin = spentMs(folder.db);
    rows = 0;
    for (const query of statements) rows += await bare.rows(query);
    theirs.push(spentMs(folder.db) - begin);
  }
  return {
    ours: median(ours),
    bare: theirs.length ? median(theirs) : null,
    rows: theirs.length ? rows : null,
    read: theirs.length ? await bare.read(last) : null,
  };
}

async function csvBytes(db: Db): Promise<number> {
  const context = await assessContext(db);
  let bytes = csvHead(beadTable([]).columns).length;
  for await (const slice of beadSlices(db, {}, {})) {
    const welds = await weldsNamed(
      db,
      slice.map(({ bead }) => bead),
    );
    const beads = slice.map(({ bead, said }) => ({
      ...bead,
      liesOn: welds.get(bead.id) ?? null,
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

async function verifyNewest({ db, path: folder }: Folder): Promise<void> {
  const [since] = await db.logEntry.findMany({ orderBy: { seq: "desc" }, skip: 100, take: 1 });
  await verifyRecords(db, folder, { since: since ?? null });
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
    ...(values.verify
      ? ([
          ["verify everything", () => verifyRecords(db, folder.path), 1],
          ["verify the newest 100 entries", () => verifyNewest(folder), 1],
        ] as const)
      : []),
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

/** The whole page that opens first, and its two halves. */
function listWorks({ db }: Folder): Awaited<ReturnType<typeof works>> {
  const first = () => listPage(db, {}, "start");
  const waits = () => openChanges(db, {}, 3);
  return [
    ["list with what waits above it", () => Promise.all([first(), waits()]), 15],
    ["list alone", first, 15],
    ["what waits alone", waits, 15],
  ];
}

const head = [
  "work",
  "ours, ms",
  "same SQL, bare driver",
  "ratio",
  "rows given",
  "rows read",
  "memory after, MB",
];
const row = (cells: readonly (string | number)[]): string => `| ${cells.join(" | ")} |`;

async function printWorks(folder: Folder, bare: Bare, beads: number): Promise<void> {
  const load = loadavg()[0]!.toFixed(1);
  console.log(`\n${beads} beads on ${engineOf(folder.db)}, the machine at load ${load}\n`);
  console.log(`${row(head)}\n${row(head.map(() => "---"))}`);
  for (const [name, work, runs] of await works(folder)) {
    const { ours, bare: theirs, rows, read } = await time(folder, bare, work, runs, name === "save a bead");
    const memory = (process.memoryUsage().rss / 2 ** 20).toFixed(0);
    const beside = theirs === null ? ["", ""] : [ms(theirs), (ours / theirs).toFixed(1)];
    console.log(row([name, ms(ours), ...beside, rows ?? "", read ?? "", memory]));
  }
}

async function printList(folder: Folder, bare: Bare): Promise<void> {
  const lines = [];
  for (const [work, run, runs] of listWorks(folder)) {
    const { ours, bare: theirs } = await time(folder, bare, run, runs);
    lines.push({ work, ours, bare: theirs });
  }
  console.log(JSON.stringify(lines));
}

function folderOf(beads: number, keep: string | null): Promise<Folder> {
  if (values.at !== undefined) return namedDatabase(values.at, keep ?? "", beads);
  return keep === null ? makeFolder() : keptFolder(keep, beads);
}

async function bench(beads: number, keep: string | null): Promise<void> {
  const folder = await folderOf(beads, keep);
  let bare: Bare | null = null;
  try {
    if (keep === null) await fill(folder, beads);
    bare = await openBare(folder);
    await (values.list ? printList(folder, bare) : printWorks(folder, bare, beads));
  } finally {
    await bare?.close();
    await folder.db.$disconnect();
    if (keep === null) rmSync(folder.path, { recursive: true, force: true });
  }
}

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    postgresql: { type: "boolean" },
    verify: { type: "boolean" },
    keep: { type: "string" },
    list: { type: "boolean" },
    at: { type: "string" },
  },
});
const sizes = positionals.map(Number).filter((n) => Number.isInteger(n) && n > 0);
if (values.at !== undefined && (values.keep === undefined || sizes.length !== 1)) {
  console.error("--at URL needs --keep FOLDER, for its photos, and one number of beads");
  process.exit(2);
}
const stop = values.postgresql ? await startPostgres() : null;
try {
  for (const beads of sizes.length > 0 ? sizes : [1000, 10_000]) await bench(beads, values.keep ?? null);
} finally {
  await stop?.();
}
