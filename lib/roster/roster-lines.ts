import { roleNames, roles, type Role } from "@/lib/people";

/** One person of a pasted list. */
export interface RosterLine {
  readonly name: string;
  readonly mark: string | null;
  /** In the order of the list, the leading one first; empty: none were named. null: beside a role stands a word that is none. */
  readonly roles: readonly Role[] | null;
}

/** What a role may be called in a list. */
const called: ReadonlyMap<string, Role> = new Map([
  ...roles.flatMap((role) => [[role, role] as const, [roleNames[role].toLowerCase(), role] as const]),
  ["student", "welder"],
]);

const wordsOf = (cell: string): readonly (Role | undefined)[] =>
  cell
    .split(/[+;,]/)
    .map((word) => word.trim().toLowerCase())
    .filter(Boolean)
    .map((word) => called.get(word));
const namesRole = (cell: string): boolean => wordsOf(cell).some((role) => role !== undefined);

const isMark = (cell: string): boolean => /\d/.test(cell);

/** Name, identification and roles in the cells of a line; none where it says nothing. */
function lineOf(cells: readonly string[]): RosterLine[] {
  const [first = ""] = cells;
  if (first === "" || /^(name|student|identification|no\.?)$/i.test(first)) return [];
  // Beside an identification stands a name, whatever it reads as.
  const sure = isMark(first) ? 2 : 1;
  const isRoles = (cell: string, i: number): boolean => i >= sure && namesRole(cell);
  const named = cells.filter(isRoles).flatMap(wordsOf);
  const known = named.filter((role) => role !== undefined);
  const held = known.length === named.length ? [...new Set(known)] : null;
  const [one = "", other = null] = cells.filter((cell, i) => !isRoles(cell, i));
  return other !== null && isMark(one) && !isMark(other)
    ? [{ name: other, mark: one, roles: held }]
    : [{ name: one, mark: other, roles: held }];
}

/**
 * People out of a pasted list: one a line, name and identification parted by tab, semicolon or comma, in either order; with a
 * digit in it, it is the identification. Behind them the roles, parted by + or ; ("Imke Tal; W-07; instructor + inspector").
 * A heading line ("Name; Identification") and blank lines are left out.
 */
export function rosterLines(text: string): readonly RosterLine[] {
  return text
    .split(/\r?\n/)
    .map((line) =>
      line
        // A table's cells are parted by tabs, and in one of them several roles may stand.
        .split(line.includes("\t") ? /\t/ : /[;,]/)
        .map((part) => part.trim().replace(/^"|"$/g, ""))
        .filter(Boolean),
    )
    .flatMap(lineOf);
}
