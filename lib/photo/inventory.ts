import { readdir } from "node:fs/promises";
import path from "node:path";
import { errorCode } from "./disk";
import { isSha256, photoFolders } from "./paths";

/** Everything that lies in the photo folders of a data folder, by what it is; nothing is read, only named. */
export interface PhotoInventory {
  /** SHA-256 by the name of the file. */
  readonly originals: readonly string[];
  /** SHA-256 by the name of the folder with its derived pictures. */
  readonly views: readonly string[];
  /** Uploads that were not finished. */
  readonly incoming: readonly string[];
  /** Photos that nobody named and that were put aside. */
  readonly strays: readonly string[];
  /** What this program never puts there, with its folder. */
  readonly odd: readonly string[];
}

export async function photoInventory(dataDir: string): Promise<PhotoInventory> {
  const { originals, views, incoming, strays } = photoFolders(dataDir);
  const [first, second] = [await namesIn(originals), await namesIn(views)];
  const odd = (folder: string, names: readonly string[]) =>
    names.filter((name) => !isSha256(name)).map((name) => path.join(path.basename(folder), name));
  return {
    originals: first.filter(isSha256),
    views: second.filter(isSha256),
    incoming: await namesIn(incoming),
    strays: (await namesIn(strays)).filter(isSha256),
    odd: [...odd(originals, first), ...odd(views, second)],
  };
}

/** Names in a folder, sorted; none where there is no such folder. */
export async function namesIn(folder: string): Promise<readonly string[]> {
  try {
    return (await readdir(folder)).sort();
  } catch (error) {
    if (errorCode(error) === "ENOENT") return [];
    throw error;
  }
}
