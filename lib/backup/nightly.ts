/** When a nightly backup is due, what its copies are called, and which go. Pure: times and names are handed in. */

const HOUR_MS = 3_600_000;

/** "backup-2026-11-26T01-30-00Z": sorts by time, fits every file system. */
export const nightlyName = (now: Date): string =>
  `backup-${now.toISOString().slice(0, 19).replaceAll(":", "-")}Z`;

const isCopy = (name: string): boolean => /^backup-\d{4}-\d{2}-\d{2}T\d{2}-\d{2}-\d{2}Z$/.test(name);

/** Copies there are beyond the newest `keep`, by their names; whatever else lies in the folder is nobody's business. */
export function staleCopies(names: readonly string[], keep: number): readonly string[] {
  const copies = names.filter(isCopy).sort();
  return copies.slice(0, Math.max(0, copies.length - keep));
}

/** The newest copy, if there is one. */
export const newestCopy = (names: readonly string[]): string | null =>
  names.filter(isCopy).sort().at(-1) ?? null;

/**
 * Whether tonight's copy is still to be made: the last time the clock stood at this hour lies after the last try. A machine
 * that slept through the hour makes it when it wakes. `hour`: of the machine's own day.
 */
export function isDue(now: Date, hour: number, lastTry: Date | null): boolean {
  const at = new Date(now);
  at.setHours(hour, 0, 0, 0);
  if (at > now) at.setDate(at.getDate() - 1);
  // A try in the future: the clock was put back, and what it says is no reason to make none.
  return lastTry === null || lastTry < at || lastTry > now;
}

/** Whether somebody should be told: two nights without a good copy. `since`: when it was switched on. */
export function isOverdue(now: Date, lastGood: Date | null, since: Date): boolean {
  const from = lastGood === null || lastGood < since ? since : lastGood;
  return now.getTime() - from.getTime() > 50 * HOUR_MS;
}
