import { rm, stat } from "node:fs/promises";
import path from "node:path";
import { namesIn } from "./inventory";
import { incomingFolder } from "./paths";

const DAY_MS = 24 * 3600 * 1000;

/** Removes uploads that a crash left behind, untouched for a day. Returns how many. Call it at start. */
export async function sweepIncoming(place: string, nowMs: number = Date.now()): Promise<number> {
  const incoming = incomingFolder(place);
  let removed = 0;
  for (const name of await namesIn(incoming)) {
    const entry = path.join(incoming, name);
    const touched = await stat(entry).catch(() => null); // gone meanwhile: its own upload cleared it
    if (touched === null || touched.mtimeMs >= nowMs - DAY_MS) continue;
    await rm(entry, { recursive: true, force: true });
    removed += 1;
  }
  return removed;
}
