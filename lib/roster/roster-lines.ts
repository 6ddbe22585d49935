/** One student of a pasted list. */
export interface RosterLine {
  readonly name: string;
  readonly mark: string | null;
}

/**
 * Students out of a pasted list: one a line, name and identification parted by tab, semicolon or comma, in either order; with
 * a digit in it, it is the identification. A heading line ("Name; Identification") and blank lines are left out.
 */
export function rosterLines(text: string): readonly RosterLine[] {
  return text
    .split(/\r?\n/)
    .map((line) =>
      line
        .split(/[\t;,]/)
        .map((part) => part.trim().replace(/^"|"$/g, ""))
        .filter(Boolean),
    )
    .flatMap(([first = "", second]): RosterLine[] => {
      if (first === "" || /^(name|student|identification|no\.?)$/i.test(first)) return [];
      if (second === undefined) return [{ name: first, mark: null }];
      return /\d/.test(first) && !/\d/.test(second)
        ? [{ name: second, mark: first }]
        : [{ name: first, mark: second }];
    });
}
