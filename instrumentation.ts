/** Once for a process, however often this module is loaded. */
const held = globalThis as { toelineFolder?: Promise<(() => void) | null> };

/** Runs in the server before its first request. */
export async function register(): Promise<void> {
  if (process.env["NEXT_RUNTIME"] !== "nodejs") return;
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
  // What is made from now on is this user's alone.
  process.umask(0o077);
  // A file has one server; a PostgreSQL has as many as it likes, and is backed up by its own means.
  if (engineOfUrl(databaseUrl()) === "postgresql") return;
  if ((await (held.toelineFolder ??= takeLock(dataDir(), SERVING))) !== null) return watchNights(db, dataDir);
  console.error(inUse(dataDir()));
  process.exit(1);
}
