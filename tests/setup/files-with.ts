import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";

/** The files of a data folder's database, by name, in which these letters stand somewhere. */
export function filesWith(folder: string, text: string): readonly string[] {
  return readdirSync(folder).filter(
    (name) =>
      name.startsWith("toeline.db") &&
      readFileSync(path.join(folder, name)).toString("latin1").includes(text),
  );
}
