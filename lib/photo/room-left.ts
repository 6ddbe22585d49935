import { constants } from "node:fs";
import { access, statfs } from "node:fs/promises";

/** Less free room than that is soon used up: five of the largest photos. Own estimate. */
const LITTLE_BYTES = 200 * 1024 * 1024;

/** How much more a data folder takes: `none` where it cannot be written at all, or is not there. */
export type RoomLeft = "enough" | "little" | "none";

/** What can still be written where the data lies, asked before anybody tries. */
export const roomLeft = (folder: string): Promise<RoomLeft> =>
  access(folder, constants.W_OK)
    .then(() => statfs(folder))
    .then(({ bavail, bsize }) => roomIn(bavail * bsize))
    .catch(() => "none");

/** @param freeBytes what whoever serves may still write */
export const roomIn = (freeBytes: number): RoomLeft =>
  freeBytes <= 0 ? "none" : freeBytes < LITTLE_BYTES ? "little" : "enough";
