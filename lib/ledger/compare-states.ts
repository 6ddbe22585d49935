import { issue } from "@/lib/base";
import type { LogEntry } from "./entry";
import type { StateIssue } from "./issue";

/** The latest digest the log gives each subject; null where the log says it is gone. */
export function latestDigests(entries: readonly LogEntry[]): ReadonlyMap<string, string | null> {
  return new Map(entries.map((entry) => [entry.subject, entry.digest]));
}

/**
 * Compares what is there with what the log last said of it. `states`: subject -> digest of its present state.
 * - `state-changed`: there, but not as last logged
 * - `state-missing`: logged as there, and gone
 * - `state-unlogged`: there, and the log does not know it, or says it is gone (so too when the log was cut off)
 */
export function compareStates(
  entries: readonly LogEntry[],
  states: ReadonlyMap<string, string>,
): readonly StateIssue[] {
  const logged = latestDigests(entries);
  const found: StateIssue[] = [];
  for (const [subject, digest] of states) {
    const said = logged.get(subject) ?? null;
    if (said === null) found.push(issue("state-unlogged", [subject], { subject }));
    else if (said !== digest) found.push(issue("state-changed", [subject], { subject }));
  }
  for (const [subject, digest] of logged) {
    if (digest !== null && !states.has(subject)) found.push(issue("state-missing", [subject], { subject }));
  }
  return found;
}
