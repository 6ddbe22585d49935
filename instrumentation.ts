import type { Within } from "@/lib/backup";
import type { Site } from "@/lib/sites";

/** Once for a process, however often this module is loaded. */
const held = globalThis as { toelineFolder?: Promise<(() => void) | null> };
/** The sites that are open, where several are served: the door in front says so before it begins (lib/cli/serve-sites.mjs). */
const open = globalThis as { [key: symbol]: readonly Site[] | undefined };

/** Runs in the server before its first request. */
export async function register(): Promise<void> {
  // Whatever stands behind this line is left out where there is no Node.
  if (process.env["NEXT_RUNTIME"] !== "nodejs") return;
  const [
    { tellOwnAddress },
    { watchNights },
    { dataDir, databaseUrl, db, engineOfUrl },
    { inUse, SERVING, takeLock },
    { inSite, isManySites },
  ] = await Promise.all([
    import("@/lib/account"),
    import("@/lib/backup"),
    import("@/lib/db"),
    import("@/lib/cli/data-lock.mjs"),
    import("@/lib/sites"),
  ]);
  // What is made from now on is this user's alone.
  process.umask(0o077);
  const leave = (sentence: string): never => {
    console.error(sentence);
    process.exit(1);
  };
  if (isManySites()) {
    const sites = open[Symbol.for("toeline.open-sites")];
    if (!sites)
      return leave("Several sites are served by npm start alone: nobody would know whose a request is.");
    const files = sites.filter(({ database }) => engineOfUrl(database) === "sqlite");
    const within = files.map(
      (site): Within =>
        (work) =>
          inSite(site, work),
    );
    return watchNights(within, db, dataDir);
  }
  if (!held.toelineFolder) tellOwnAddress();
  // A file has one server; a PostgreSQL has as many as it likes, and is backed up by its own means.
  if (engineOfUrl(databaseUrl()) === "postgresql") return;
  if ((await (held.toelineFolder ??= takeLock(dataDir(), SERVING))) === null) return leave(inUse(dataDir()));
  return watchNights([(work) => work()], db, dataDir);
}
