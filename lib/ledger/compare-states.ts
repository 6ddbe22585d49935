import { issue } from "@/lib/base";
import type { StateIssue } from "./issue";

/**
 * Compares what is there with what the log last said of it. `logged`: subject -> the latest digest the log gives it, null
 * where it says that it is gone; `states`: subject -> digest of its present state.
 * - `state-changed`: there, but not as last logged
 * - `state-missing`: logged as there, and gone
 * - `state-unlogged`: there, and the log does not know it, or says it is gone (so too when the log was cut off)
 */
export function compareStates(
  logged: ReadonlyMap<string, string | null>,
  states: ReadonlyMap<string, string>,
): readonly StateIssue[] {
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
