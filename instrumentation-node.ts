import { tellOwnAddress } from "@/lib/account";
import { watchNights } from "@/lib/backup";
import { inUse, SERVING, takeLock } from "@/lib/cli/data-lock.mjs";
import { databaseUrl, dataDir, db, engineOfUrl } from "@/lib/db";

/** Once for a process, however often this module is loaded. */
const held = globalThis as { toelineFolder?: Promise<(() => void) | null> };

/** What a server does before its first request. */
export async function beginServing(): Promise<void> {
  if (!held.toelineFolder) tellOwnAddress();
  // What is made from now on is this user's alone.
  process.umask(0o077);
  // A file has one server; a PostgreSQL has as many as it likes, and is backed up by its own means.
  if (engineOfUrl(databaseUrl()) === "postgresql") return;
  if ((await (held.toelineFolder ??= takeLock(dataDir(), SERVING))) !== null) return watchNights(db, dataDir);
  console.error(inUse(dataDir()));
  process.exit(1);
}
