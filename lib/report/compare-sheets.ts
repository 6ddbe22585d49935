import type { SheetDocument, SheetMark } from "./sheet";

/** One imperfection, on the bead before and on this one, with the sizes as they stand on the sheets; null: not marked. */
export interface ComparedMark {
  readonly name: string;
  readonly before: readonly string[] | null;
  readonly after: readonly string[] | null;
}

/** A line of "how it was run" that is not the same on both; null: not recorded. */
export interface ComparedRow {
  readonly label: string;
  readonly before: string | null;
  readonly after: string | null;
}

export interface Comparison {
  readonly gone: readonly ComparedMark[];
  readonly still: readonly ComparedMark[];
  readonly fresh: readonly ComparedMark[];
  readonly setup: readonly ComparedRow[];
}

/**
 * What differs between two beads' sheets: imperfections gone, still there and new (in the order of the sheets), and
 * the set-up lines that changed. "Gone" means no longer marked: whether somebody looked is the verdict's question.
 */
export function compareSheets(before: SheetDocument, after: SheetDocument): Comparison {
  const names = [...new Set([...before.marks, ...after.marks].map(kindOf))];
  const marks = names.map((name) => ({
    name,
    before: sizesOf(before.marks, name),
    after: sizesOf(after.marks, name),
  }));
  const labels = [...new Set([...before.setup, ...after.setup].map(({ label }) => label))];
  const valueIn = (sheet: SheetDocument, label: string) =>
    sheet.setup.find((row) => row.label === label)?.value ?? null;
  return {
    gone: marks.filter((mark) => mark.after === null),
    still: marks.filter((mark) => mark.before !== null && mark.after !== null),
    fresh: marks.filter((mark) => mark.before === null),
    setup: labels
      .map((label) => ({ label, before: valueIn(before, label), after: valueIn(after, label) }))
      .filter((row) => row.before !== row.after),
  };
}

/** Several of a kind share a row of the sheet and say how many they are: four and then five is still the same kind. */
const COUNT = / × \d+$/;
const kindOf = ({ name }: SheetMark): string => name.replace(COUNT, "");

function sizesOf(marks: readonly SheetMark[], kind: string): readonly string[] | null {
  const found = marks.filter((mark) => kindOf(mark) === kind);
  if (found.length === 0) return null;
  return found.map(({ name, size }) => {
    const count = COUNT.exec(name)?.[0].trim() ?? "";
    return [count, size || "no size"].filter(Boolean).join(": ");
  });
}
