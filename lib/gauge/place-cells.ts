/** A cell of a study's sheet: a line is one try of one person, in the order of the bench. */
export interface SheetCell {
  readonly line: number;
  readonly part: number;
}

/**
 * Where what was pasted goes. A block as wide as there are parts, or any other block that fits, lies on the sheet's lines
 * as it is; one that has parts down its side is turned. A single column or row runs on in the order of the bench.
 *
 * @returns The cells with their texts, and how many found no place.
 */
export function placeCells(
  block: readonly (readonly string[])[],
  at: SheetCell,
  sheet: { readonly lines: number; readonly parts: number },
): { readonly cells: readonly (SheetCell & { readonly text: string })[]; readonly beyond: number } {
  const width = Math.max(0, ...block.map((row) => row.length));
  if (width <= 1 || block.length === 1) return runOn(block.flat(), at, sheet);
  const turned = block.length === sheet.parts && width !== sheet.parts && width <= sheet.lines;
  const rows = turned ? Array.from({ length: width }, (_, i) => block.map((row) => row[i] ?? "")) : block;
  const all = rows.flatMap((row, i) =>
    row.map((text, j) => ({ line: at.line + i, part: at.part + j, text })),
  );
  return fitting(all, sheet);
}

function runOn(
  texts: readonly string[],
  at: SheetCell,
  sheet: { readonly lines: number; readonly parts: number },
): ReturnType<typeof placeCells> {
  const first = at.line * sheet.parts + at.part;
  const all = texts.map((text, i) => ({
    line: Math.floor((first + i) / sheet.parts),
    part: (first + i) % sheet.parts,
    text,
  }));
  return fitting(all, sheet);
}

function fitting(
  all: readonly (SheetCell & { readonly text: string })[],
  { lines, parts }: { readonly lines: number; readonly parts: number },
): ReturnType<typeof placeCells> {
  const cells = all.filter(({ line, part }) => line < lines && part < parts);
  return { cells, beyond: all.length - cells.length };
}
