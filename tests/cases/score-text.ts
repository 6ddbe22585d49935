import { shareOf } from "@/lib/trends";

/** 44 of 50 -> "44 of 50, 88 % (76 to 94)": the count, the share, and its 95 % interval by Wilson. */
export function shareCell(count: number, of: number): string {
  const { value, low, high } = shareOf(count, of);
  if (value === null) return "none asked for";
  return `${count} of ${of}, ${percent(value)} % (${percent(low)} to ${percent(high)})`;
}

export const percent = (share: number): string => String(Math.round(100 * share));

/** Columns as wide as their widest cell, with two spaces between. */
export function table(rows: readonly (readonly string[])[]): string {
  const widths = rows.reduce<number[]>(
    (least, row) => row.map((cell, i) => Math.max(cell.length, least[i] ?? 0)),
    [],
  );
  return rows
    .map((row) => `  ${row.map((cell, i) => cell.padEnd(widths[i]!)).join("  ")}`.trimEnd())
    .join("\n");
}
