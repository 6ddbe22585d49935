"use client";

import { useEffect, useState } from "react";
import { pastedCells, placeCells, readCell, studyLimits, type CellUnit, type SheetCell } from "@/lib/gauge";

/** What is typed on a sheet: everything as text, cells by line and part. */
export interface Sheet {
  readonly on: string;
  readonly what: string;
  readonly people: string;
  readonly parts: string;
  readonly tries: string;
  readonly tolerance: string;
  readonly cells: Readonly<Record<string, string>>;
}

const cellKey = ({ line, part }: SheetCell): string => `${line}.${part}`;
const within = (text: string, [low, high]: readonly [number, number]): number =>
  Math.min(high, Math.max(low, Math.round(Number(text)) || low));

/** Marks or letters as typed, parted by commas or blanks. */
const peopleOf = (text: string): readonly string[] =>
  text
    .split(/[,;\s]+/)
    .filter(Boolean)
    .slice(0, studyLimits.people[1]);

/** Kept on this device until it is saved: ninety readings are an hour's work. */
function useKept(key: string, start: Sheet): [Sheet, (sheet: Sheet) => void, () => void] {
  const [sheet, setSheet] = useState(start);
  useEffect(() => {
    const kept = readKept(key);
    if (kept) setSheet((shown) => ({ ...shown, ...kept }));
  }, [key]);
  const keep = (next: Sheet) => {
    setSheet(next);
    writeKept(key, next);
  };
  return [sheet, keep, () => writeKept(key, null)];
}

/** A device that keeps nothing, or something else under this key, has nothing kept. */
function readKept(key: string): Partial<Sheet> | null {
  try {
    return JSON.parse(window.localStorage.getItem(key) ?? "null") as Partial<Sheet> | null;
  } catch {
    return null;
  }
}

function writeKept(key: string, sheet: Sheet | null): void {
  try {
    if (sheet) window.localStorage.setItem(key, JSON.stringify(sheet));
    else window.localStorage.removeItem(key);
  } catch {
    // Then the sheet lives as long as the page does.
  }
}

/** What a sheet says of the study's size: people, parts, and its lines in the order of the bench. */
function shapeOf(sheet: Sheet) {
  const people = peopleOf(sheet.people);
  const parts = within(sheet.parts, studyLimits.parts);
  const tries = within(sheet.tries, studyLimits.tries);
  const lines = people.flatMap((person) => Array.from({ length: tries }, (_, t) => ({ person, t })));
  const all = lines.flatMap((_, line) => Array.from({ length: parts }, (__, part) => ({ line, part })));
  return { people, parts, tries, lines, all };
}

/** The study as it is sent: the store reads it whole and says what does not fit. */
function studyOf(sheet: Sheet, unit: CellUnit, valueAt: (cell: SheetCell) => number | null) {
  const { people, parts, tries } = shapeOf(sheet);
  const list = <T>(length: number, of: (i: number) => T): T[] => Array.from({ length }, (_, i) => of(i));
  return {
    ...{ on: sheet.on, what: sheet.what, unit: unit === "deg" ? "deg" : "mm", people },
    parts: list(parts, (part) => `${part + 1}`),
    tolerance: sheet.tolerance.trim() === "" ? null : (readCell(sheet.tolerance, unit) ?? NaN),
    values: people.map((_, i) =>
      list(parts, (part) => list(tries, (t) => valueAt({ line: i * tries + t, part }))),
    ),
  };
}

/** A sheet under the hand: its lines in the order of the bench, what is missing, and what would be sent. */
export function useSheet(key: string, start: Sheet, unit: CellUnit) {
  const [sheet, keep, forget] = useKept(key, start);
  const [beyond, setBeyond] = useState(0);
  const shape = shapeOf(sheet);
  const textAt = (cell: SheetCell): string => sheet.cells[cellKey(cell)] ?? "";
  const valueAt = (cell: SheetCell): number | null => readCell(textAt(cell), unit);
  const put = (found: readonly (SheetCell & { readonly text: string })[]) =>
    keep({
      ...sheet,
      cells: { ...sheet.cells, ...Object.fromEntries(found.map((one) => [cellKey(one), one.text])) },
    });
  const paste = (text: string, at: SheetCell) => {
    const placed = placeCells(pastedCells(text), at, { lines: shape.lines.length, parts: shape.parts });
    setBeyond(placed.beyond);
    put(placed.cells);
  };
  const missing = shape.all.filter((cell) => valueAt(cell) === null).length;
  const study = studyOf(sheet, unit, valueAt);
  return { ...shape, sheet, keep, forget, textAt, valueAt, put, paste, beyond, missing, study };
}
