import path from "node:path";

/**
 * The one folder that holds the database and the photos. Named by TOELINE_DATA, `data` beside package.json otherwise.
 * Read on each call, because tests give each server its own.
 */
export function dataDir(): string {
  return path.resolve(/* turbopackIgnore: true */ process.cwd(), process.env["TOELINE_DATA"] || "data");
}

export function databaseUrl(): string {
  return `file:${path.join(dataDir(), "toeline.db")}`;
}
