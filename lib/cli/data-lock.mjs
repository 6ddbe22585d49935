import { mkdirSync } from "node:fs";
import path from "node:path";

/** Held by whoever sets up, and by whoever serves: a start is refused while either is held. */
export const SETTING_UP = "setting-up.lock";
export const SERVING = "serving.lock";

/**
 * Takes a lock on a data folder for as long as this process lives: the operating system lets it go, however the process
 * ends. Answers what gives it back; null: somebody else holds it.
 */
export async function takeLock(folder, name) {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const { default: Database } = await import("better-sqlite3");
  const lock = new Database(path.join(folder, name), { timeout: 0 });
  try {
    lock.exec("BEGIN EXCLUSIVE");
    return () => lock.close();
  } catch (error) {
    lock.close();
    if (error?.code === "SQLITE_BUSY") return null;
    throw error;
  }
}

/** Whether nobody sets up or serves this folder; with it the lock of whoever sets up, to be held from now on. */
export async function lockForStart(folder) {
  const mine = await takeLock(folder, SETTING_UP);
  if (mine === null) return null;
  const serving = await takeLock(folder, SERVING);
  if (serving === null) {
    mine();
    return null;
  }
  serving();
  return mine;
}

export const inUse = (folder) =>
  `The data folder ${folder} is already in use by another Toeline on this machine. Open that one, or stop it first (Ctrl-C where it runs), or name another folder: TOELINE_DATA=/path npm start`;
