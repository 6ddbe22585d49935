const WINDOW_MS = 60_000;
const ALLOWED = 6;

/** Failed tries per sign-in name; in memory, because a restart of the server is no way around it for a guesser. */
const failed = new Map<string, readonly number[]>();

const recent = (name: string, now: number): readonly number[] =>
  (failed.get(name) ?? []).filter((at) => now - at < WINDOW_MS);

/** Seconds to wait before this name may be tried again; 0: now. */
export function waitSeconds(name: string, now: number): number {
  const tries = recent(name, now);
  return tries.length < ALLOWED ? 0 : Math.ceil((WINDOW_MS - (now - (tries[0] ?? now))) / 1000);
}

export function noteFailure(name: string, now: number): void {
  failed.set(name, [...recent(name, now), now]);
}

export function forgetFailures(name: string): void {
  failed.delete(name);
}
