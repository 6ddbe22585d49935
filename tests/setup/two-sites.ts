import { createHash } from "node:crypto";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Database from "better-sqlite3";
import pg from "pg";
import { loadSites, type Site } from "@/lib/sites";
import { layMigrated } from "./migrated";
import { newPostgresDatabase, postgresToTest } from "./postgres-database";
import { setup as startPostgres } from "./postgres-global";
import { s3Keys, startS3Stub, type S3Stub } from "./s3-stub";

export interface TwoSites {
  /** The data folder of all. */
  readonly folder: string;
  /** What a server of them is told. */
  readonly env: Readonly<Record<string, string>>;
  readonly north: Site;
  readonly south: Site;
  /** The bucket of both, where they have one. */
  readonly bucket: S3Stub | null;
  /** Takes everything away, once nobody is connected any more. */
  remove(): Promise<void>;
}

interface Place {
  readonly env: Readonly<Record<string, string>>;
  readonly bucket: S3Stub | null;
  /** Lays the empty, migrated database of a site. */
  lay(site: Site): Promise<unknown>;
  remove(): Promise<void>;
}

const inFolders: Place = {
  env: { DATABASE_URL: "", TOELINE_PHOTOS: "" },
  bucket: null,
  async lay({ folder }) {
    mkdirSync(path.join(folder, "photos"), { recursive: true });
    await layMigrated(path.join(folder, "toeline.db"));
  },
  remove: async () => undefined,
};

/** A real PostgreSQL with a database for each site, and a bucket (the stand-in) with a prefix for each. */
async function onServers(): Promise<Place> {
  const stop = await startPostgres();
  const server = postgresToTest();
  delete process.env["TOELINE_TEST_POSTGRES"];
  const bucket = await startS3Stub();
  return {
    env: {
      DATABASE_URL: `${server}/works_{site}`,
      TOELINE_PHOTOS: "s3://works/{site}",
      TOELINE_S3_ENDPOINT: bucket.endpoint,
      AWS_ACCESS_KEY_ID: s3Keys.accessKeyId,
      AWS_SECRET_ACCESS_KEY: s3Keys.secretAccessKey,
    },
    bucket,
    async lay({ name, folder }) {
      mkdirSync(folder, { recursive: true });
      await newPostgresDatabase(server, `works_${name}`);
    },
    async remove() {
      await bucket.close();
      await stop();
    },
  };
}

/** Where sites may lie: in folders with SQLite, or on a PostgreSQL and in a bucket. */
export const siteKinds = ["folders", "servers"] as const;
export type SiteKind = (typeof siteKinds)[number];

/** Two sites with an empty, migrated database each, and whatever others are named besides, of which nothing is there. */
export async function makeTwoSites(
  others: Readonly<Record<string, object>> = {},
  kind: SiteKind = "folders",
): Promise<TwoSites> {
  const folder = mkdtempSync(path.join(tmpdir(), "toeline-sites-"));
  const file = path.join(folder, "sites.json");
  const both = { north: { hosts: ["north.localhost"] }, south: { hosts: ["south.localhost"] } };
  writeFileSync(file, JSON.stringify({ ...both, ...others }));
  const place = kind === "folders" ? inFolders : await onServers();
  const env = { TOELINE_SITES: file, TOELINE_DATA: folder, ...place.env };
  const [north, south] = loadSites({ ...env });
  if (!north || !south) throw new Error("no sites");
  for (const site of [north, south]) await place.lay(site);
  const remove = async (): Promise<void> => {
    await place.remove();
    rmSync(folder, { recursive: true, force: true });
  };
  return { folder, env, north, south, bucket: place.bucket, remove };
}

function cellsOfFile(folder: string): string[] {
  const file = new Database(path.join(folder, "toeline.db"), { readonly: true });
  try {
    const tables = file
      .prepare("SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'BeadWords_%'")
      .pluck()
      .all() as string[];
    return tables.flatMap((table) =>
      (file.prepare(`SELECT * FROM "${table}"`).raw().all() as unknown[][]).map(
        (row) => `${table} ${row.map(String).join(" | ")}`,
      ),
    );
  } finally {
    file.close();
  }
}

async function cellsOfServer(url: string): Promise<string[]> {
  const client = new pg.Client(url);
  await client.connect();
  try {
    const ask = async (text: string): Promise<string[]> =>
      (await client.query<{ one: string }>(text)).rows.map(({ one }) => one);
    const tables = await ask(`SELECT tablename AS one FROM pg_tables WHERE schemaname = 'public'`);
    const cells: string[] = [];
    for (const table of tables)
      for (const row of await ask(`SELECT row_to_json(t)::text AS one FROM "${table}" t`))
        cells.push(`${table} ${row}`);
    return cells;
  } finally {
    await client.end();
  }
}

/** Every row of a site's database, as text. */
const cellsOf = async ({ database, folder }: Site): Promise<string[]> =>
  database.startsWith("file:") ? cellsOfFile(folder) : cellsOfServer(database);

/** Everything there is of a site's database, to be compared with later. */
export const stateOf = async (site: Site): Promise<readonly string[]> => (await cellsOf(site)).sort();

/** Our own ids (lib/store/new-id.ts), whatever else is long and carries a digit, as digests do, and the names of people. */
const words = /\b[bcdfghjkmnpqrstvwxyz2-9]{12}\b|(?=[\w-]*\d)[\w-]{16,}|Marit Oddny|Vesna Ling/g;

/** The picture of the guided first bead: any site may come to have it of itself, so it tells nothing. */
const shipped = path.join(import.meta.dirname, "../../demo-images/set/lap-cold-lap.jpg");
const shippedDigest = (): string => createHash("sha256").update(readFileSync(shipped)).digest("hex");

/** What tells that something is of one site and not of the other: ids, digests, names. */
export async function marksOf(site: Site, other: Site): Promise<ReadonlySet<string>> {
  const not = new Set((await cellsOf(other)).flatMap((cell) => cell.match(words) ?? [])).add(shippedDigest());
  return new Set(
    (await cellsOf(site)).flatMap((cell) => cell.match(words) ?? []).filter((word) => !not.has(word)),
  );
}

/** Which of these marks stand in a text, those aside that were sent with the question. */
export function marksIn(text: string, marks: ReadonlySet<string>, sent: string): string[] {
  return [...new Set(text.match(words))].filter((word) => marks.has(word) && !sent.includes(word));
}

/** What was asked of the first site's part of the bucket, from this request on; where there is none: nothing. */
export const askedOfNorth = ({ bucket }: TwoSites, first: number): readonly string[] =>
  (bucket?.asked ?? []).slice(first).filter((asked) => asked.includes("/works/north/"));
