import { createHash } from "node:crypto";
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Database from "better-sqlite3";
import { loadSites, type Site } from "@/lib/sites";
import { layMigrated } from "./migrated";

export interface TwoSites {
  /** The data folder of all, to be removed at the end. */
  readonly folder: string;
  /** What a server of them is told. */
  readonly env: Readonly<Record<string, string>>;
  readonly north: Site;
  readonly south: Site;
}

/** Two sites with an empty, migrated SQLite each, and whatever others are named besides, of which nothing is there. */
export async function makeTwoSites(others: Readonly<Record<string, object>> = {}): Promise<TwoSites> {
  const folder = mkdtempSync(path.join(tmpdir(), "toeline-sites-"));
  const file = path.join(folder, "sites.json");
  const both = { north: { hosts: ["north.localhost"] }, south: { hosts: ["south.localhost"] } };
  writeFileSync(file, JSON.stringify({ ...both, ...others }));
  const env = { TOELINE_SITES: file, TOELINE_DATA: folder, DATABASE_URL: "", TOELINE_PHOTOS: "" };
  const [north, south] = loadSites({ ...env });
  if (!north || !south) throw new Error("no sites");
  for (const site of [north, south]) {
    mkdirSync(path.join(site.folder, "photos"), { recursive: true });
    await layMigrated(path.join(site.folder, "toeline.db"));
  }
  return { folder, env, north, south };
}

/** Every cell of every row of a site's database, as text. */
function cellsOf({ folder }: Site): string[] {
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

/** Everything there is of a site, to be compared with later. */
export const stateOf = (site: Site): readonly string[] => cellsOf(site).sort();

/** Our own ids (lib/store/new-id.ts), whatever else is long and carries a digit, as digests do, and the names of people. */
const words = /\b[bcdfghjkmnpqrstvwxyz2-9]{12}\b|(?=[\w-]*\d)[\w-]{16,}|Marit Oddny|Vesna Ling/g;

/** The picture of the guided first bead: any site may come to have it of itself, so it tells nothing. */
const shipped = path.join(import.meta.dirname, "../../demo-images/set/lap-cold-lap.jpg");
const shippedDigest = (): string => createHash("sha256").update(readFileSync(shipped)).digest("hex");

/** What tells that something is of one site and not of the other: ids, digests, names. */
export function marksOf(site: Site, other: Site): ReadonlySet<string> {
  const not = new Set(cellsOf(other).flatMap((cell) => cell.match(words) ?? [])).add(shippedDigest());
  return new Set(
    cellsOf(site)
      .flatMap((cell) => cell.match(words) ?? [])
      .filter((word) => !not.has(word)),
  );
}

/** Which of these marks stand in a text, those aside that were sent with the question. */
export function marksIn(text: string, marks: ReadonlySet<string>, sent: string): string[] {
  return [...new Set(text.match(words))].filter((word) => marks.has(word) && !sent.includes(word));
}
