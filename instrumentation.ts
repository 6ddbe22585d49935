import type { Site } from "@/lib/sites";

/** Once for a process, however often this module is loaded. */
const held = globalThis as { toelineFolder?: Promise<(() => void) | null> };
/** The sites that are open, where several are served: the door in front says so before it begins (lib/cli/serve-sites.mjs). */
const open = globalThis as { [key: symbol]: readonly Site[] | undefined };

/** Runs in the server before its first request. */
export async function register(): Promise<void> {
  if (process.env["NEXT_RUNTIME"] !== "nodejs") return;
  const { isManySites } = await import("@/lib/sites");
  // What is made from now on is this user's alone.
  process.umask(0o077);
  return isManySites() ? registerSites() : registerOne();
}

async function registerOne(): Promise<void> {
  const [
    { tellOwnAddress },
    { watchNights },
    { dataDir, databaseUrl, db, engineOfUrl },
    { inUse, SERVING, takeLock },
  ] = await Promise.all([
    import("@/lib/account"),
    import("@/lib/backup"),
    import("@/lib/db"),
    import("@/lib/cli/data-lock.mjs"),
  ]);
  if (!held.toelineFolder) tellOwnAddress();
  // A file has one server; a PostgreSQL has as many as it likes, and is backed up by its own means.
  if (engineOfUrl(databaseUrl()) === "postgresql") return;
  if ((await (held.toelineFolder ??= takeLock(dataDir(), SERVING))) !== null)
    return watchNights([(work) => work()], db, dataDir);
  console.error(inUse(dataDir()));
  process.exit(1);
}

async function registerSites(): Promise<void> {
  const [{ watchNights }, { dataDir, db, engineOfUrl }, { inSite }] = await Promise.all([
    import("@/lib/backup"),
    import("@/lib/db"),
    import("@/lib/sites"),
  ]);
  const sites = open[Symbol.for("toeline.open-sites")];
  if (sites === undefined) {
    console.error("Several sites are served by npm start alone: nobody would know whose a request is.");
    process.exit(1);
  }
  const nightly = sites.filter(({ database }) => engineOfUrl(database) === "sqlite");
  watchNights(
    nightly.map((site) => (work) => inSite(site, work)),
    db,
    dataDir,
  );
}
