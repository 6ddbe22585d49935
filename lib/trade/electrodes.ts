import { parseClassName } from "./class-name";
import { electrodePositions, type ElectrodeClass, type ElectrodePosition } from "./electrode-class";
import type { Position, Process, Progression } from "./names";
import { electrodeClasses } from "./tables/electrode-classes";

/**
 * Finds a class by what a person typed or read off the spool: case, spaces, hyphens, "AWS A5.20" prefixes, hydrogen
 * and toughness suffixes (J, H4, H8 ...), "C/M", "-1/-4", metric strength ("E491T-11") and the open A5.36 form
 * ("E71T1-C1A2-CS1") do not matter.
 * `process` chooses between wire and rod where one classification serves both (ER70S-6, ER308L).
 * Returns null for a name that is not in the table: free text stays free text.
 */
export function electrodeClass(name: string, process?: Process | null): ElectrodeClass | null {
  return electrodeClassesNamed(name, process)[0] ?? null;
}

/**
 * Every row a name may mean: more than one only where wire and rod share a classification and the process does not
 * choose. A process that fits none of them does not choose either.
 */
export function electrodeClassesNamed(name: string, process?: Process | null): readonly ElectrodeClass[] {
  const id = parseClassName(name);
  const rows = id === null ? [] : electrodeClasses.filter((row) => row.id === id);
  const chosen = rows.filter((row) => row.process === process);
  return chosen.length > 0 ? chosen : rows;
}

/** The classes a picker offers, in table order; all of them when the process is not known. */
export function electrodeClassesFor(process: Process | null): readonly ElectrodeClass[] {
  return process === null ? electrodeClasses : electrodeClasses.filter((row) => row.process === process);
}

/**
 * The electrode positions a recorded position may mean: vertical without a progression may be up or down,
 * and an unknown position may be any.
 */
export function positionsMeant(
  position: Position | null,
  progression: Progression | null,
): readonly ElectrodePosition[] {
  if (position === null) return electrodePositions;
  if (position !== "vertical") return [position];
  if (progression === null) return ["vertical-up", "vertical-down"];
  return [progression === "up" ? "vertical-up" : "vertical-down"];
}
