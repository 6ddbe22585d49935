import { canonicalJson } from "@/lib/base";
import type { RunSetup } from "@/lib/setup";

export interface UndoableSetup {
  readonly setup: RunSetup;
  /** Those before it, oldest first. */
  readonly setupsBefore: readonly RunSetup[];
}

/** More steps than anybody takes back; enough that nobody meets the end. */
const MOST = 100;

/** The fields in which two set-ups differ. */
function changedFields(a: RunSetup, b: RunSetup): readonly string[] {
  const [left, right] = [a, b] as unknown as Readonly<Record<string, unknown>>[];
  return Object.keys({ ...left, ...right }).filter(
    (field) => canonicalJson(left?.[field] ?? null) !== canonicalJson(right?.[field] ?? null),
  );
}

/** A set-up changed: by a field or as a whole. Letters typed one after the other into one field are one step. */
export function changeSetup({ setup: before, setupsBefore }: UndoableSetup, setup: RunSetup): UndoableSetup {
  const changed = changedFields(before, setup);
  if (changed.length === 0) return { setup, setupsBefore };
  const last = setupsBefore.at(-1);
  const step = last ? changedFields(last, before) : [];
  const goesOn = changed.length === 1 && step.length === 1 && step[0] === changed[0];
  return { setup, setupsBefore: goesOn ? setupsBefore : [...setupsBefore, before].slice(-MOST) };
}

/** The set-up before the last step; the same where there is none. */
export function undoSetup({ setup, setupsBefore }: UndoableSetup): UndoableSetup {
  const last = setupsBefore.at(-1);
  return last ? { setup: last, setupsBefore: setupsBefore.slice(0, -1) } : { setup, setupsBefore };
}
