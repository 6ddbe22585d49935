import { chmodSync, existsSync, readdirSync } from "node:fs";
import path from "node:path";

/** What a folder of an earlier version left readable to everybody on the machine. Photos inside closed folders need no more. */
const FILES = /^(toeline\.db(-wal|-shm|-journal)?|session-key|.*\.lock)$/;

/** Closes a data folder to all but the server's own user: folders 0700, files 0600; what is made from now on likewise. */
export function closeToOthers(folder) {
  process.umask(0o077);
  const photos = path.join(folder, "photos");
  for (const one of [
    folder,
    photos,
    ...["originals", "views", "incoming"].map((name) => path.join(photos, name)),
  ])
    if (existsSync(one)) chmodSync(one, 0o700);
  for (const name of readdirSync(folder)) if (FILES.test(name)) chmodSync(path.join(folder, name), 0o600);
}
