import path from "node:path";
import { currentSite } from "@/lib/sites";

/**
 * The one folder of this installation, or of the site that is worked for: the keys, and where nothing else is named the
 * database and the photos. Named by TOELINE_DATA, `data` beside package.json otherwise. Read on each call, because tests
 * give each server its own. All three throw where several sites are served and none is known.
 */
export function dataDir(): string {
  const site = currentSite();
  if (site) return site.folder;
  return path.resolve(/* turbopackIgnore: true */ process.cwd(), process.env["TOELINE_DATA"] || "data");
}

/** Where the photos are: the bucket that TOELINE_PHOTOS names ("s3://BUCKET/PREFIX"), the data folder otherwise. */
export function photoPlace(): string {
  const site = currentSite();
  if (site) return site.photos;
  const named = process.env["TOELINE_PHOTOS"] ?? "";
  return named.startsWith("s3://") ? named : dataDir();
}

/** Whether database and photos both lie in the data folder, so that the folder is everything. */
export const isAllInFolder = (): boolean => databaseUrl().startsWith("file:") && photoPlace() === dataDir();

/** DATABASE_URL where it names a PostgreSQL; the SQLite file in the data folder otherwise. */
export function databaseUrl(): string {
  const site = currentSite();
  if (site) return site.database;
  const named = process.env["DATABASE_URL"] ?? "";
  return /^postgres(ql)?:\/\//.test(named) ? named : `file:${path.join(dataDir(), "toeline.db")}`;
}
