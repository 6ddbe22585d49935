import { tellOwnAddress } from "@/lib/account";
import { watchNights, type Within } from "@/lib/backup";
import { inUse, SERVING, takeLock } from "@/lib/cli/data-lock.mjs";
import { databaseUrl, dataDir, db, engineOfUrl } from "@/lib/db";
import { inSite, isManySites, type Site } from "@/lib/sites";

/** Once for a process, however often this module is loaded. */
const held = globalThis as { toelineFolder?: Promise<(() => void) | null> };
/** The sites that are open, where several are served: the door in front says so before it begins (lib/cli/serve-sites.mjs). */
const open = globalThis as { [key: symbol]: readonly Site[] | undefined };

/** What a server does before its first request. */
export async function beginServing(): Promise<void> {
  // What is made from now on is this user's alone.
  process.umask(0o077);
  return isManySites() ? beginSites() : beginOne();
}

async function beginOne(): Promise<void> {
  if (!held.toelineFolder) tellOwnAddress();
  // A file has one server; a PostgreSQL has as many as it likes, and is backed up by its own means.
  if (engineOfUrl(databaseUrl()) === "postgresql") return;
  if ((await (held.toelineFolder ??= takeLock(dataDir(), SERVING))) !== null)
    return watchNights([(work) => work()], db, dataDir);
  console.error(inUse(dataDir()));
  process.exit(1);
}

function beginSites(): void {
  const sites = open[Symbol.for("toeline.open-sites")];
  if (sites === undefined) {
    console.error("Several sites are served by npm start alone: nobody would know whose a request is.");
    process.exit(1);
  }
  const files = sites.filter(({ database }) => engineOfUrl(database) === "sqlite");
  watchNights(
    files.map(
      (site): Within =>
        (work) =>
          inSite(site, work),
    ),
    db,
    dataDir,
  );
}
