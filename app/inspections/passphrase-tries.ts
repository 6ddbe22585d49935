const WINDOW_MS = 60_000;
const ALLOWED = 6;

/** Wrong passphrases at signing, by person; in memory, as at the sign-in. */
const failed = new Map<string, readonly number[]>();

/** Seconds until this person's passphrase may be tried again; 0: now. */
export function secondsToWait(personId: string, now: number): number {
  const tries = (failed.get(personId) ?? []).filter((at) => now - at < WINDOW_MS);
  return tries.length < ALLOWED ? 0 : Math.ceil((WINDOW_MS - (now - (tries[0] ?? now))) / 1000);
}

export function noteWrongPassphrase(personId: string, now: number): void {
  failed.set(personId, [...(failed.get(personId) ?? []).filter((at) => now - at < WINDOW_MS), now]);
}
