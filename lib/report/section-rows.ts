import type { SectionAssessment } from "@/lib/assess";
import type { Source } from "@/lib/base";
import type { Quantity } from "@/lib/measure";
import {
  sectionFigureIds,
  sectionFigures,
  type SectionFigureId,
  type SectionMeasures,
  type SectionRow,
} from "@/lib/section";
import { formatQuantity, lengthSystem, type UnitPreferences } from "@/lib/units";
import { sectionMissingText } from "./section-words";
import { resultWords } from "./verdict-words";

/** Which row of the rounding table a figure of a section is printed by. */
const printedAs = { mm: "length", mm2: "area", deg: "measuredAngle", ratio: "share" } as const;

/** A length that may lie on the other side of nought. */
function signedLength(mm: number, units: UnitPreferences, u = 0): string {
  return formatQuantity("length", mm, lengthSystem(units.length), u);
}

/** A figure with its ±, in the reader's units: "7.3 ± 0.2 mm", "65 ± 5 mm²", "90.1 ± 0.4°", "28 ± 2 %". */
export function sectionFigureText(quantity: Quantity, units: UnitPreferences): string {
  const { unit, value, expandedUncertainty: u } = quantity;
  return formatQuantity(printedAs[unit], value, lengthSystem(units.length), u);
}

export interface SectionFigureRow {
  readonly id: SectionFigureId;
  readonly name: string;
  readonly meaning: string;
  /** Null: cannot be read from what is drawn. */
  readonly text: string | null;
  readonly quantity: Quantity | null;
  readonly source: Source;
}

/** Every figure that a section of this joint can give, read or not. */
export function sectionFigureRows(
  { joint, figures }: SectionMeasures,
  units: UnitPreferences,
): readonly SectionFigureRow[] {
  return sectionFigureIds
    .filter((id) => sectionFigures[id].joints.includes(joint))
    .map((id) => {
      const { name, meaning, source } = sectionFigures[id];
      const quantity = figures[id];
      return { id, name, meaning, source, quantity, text: quantity && sectionFigureText(quantity, units) };
    });
}

export interface SectionClause {
  readonly id: string;
  readonly result: SectionRow["result"];
  readonly resultWord: string;
  readonly title: string;
  /** What was read, the limit, and what is missing. */
  readonly detail: string;
  /** "AWS D1.1/D1.1M, 2020, 6.10.4.1 (3)" */
  readonly clause: string;
  readonly checkYourCopy: boolean;
}

/** The rows of the chosen macro criteria in words. */
export function sectionClauses(
  { section, verdict }: SectionAssessment,
  markNumber: (id: string) => number | null,
  units: UnitPreferences,
): readonly SectionClause[] {
  return (verdict?.rows ?? []).map((row) => ({
    id: row.criterionId,
    result: row.result,
    resultWord: resultWords[row.result],
    title: row.title,
    detail: detailOf(row, section.lookedFor.length > 0, markNumber, units),
    clause: `${row.document}, ${row.edition}, ${row.clause}`,
    checkYourCopy: row.checkYourCopy,
  }));
}

/** Which figure it was, where the title leaves that open. */
function figureName({ figure, title }: SectionRow): string {
  if (figure === null) return "";
  const name = sectionFigures[figure].name.toLowerCase();
  const isSaid = title.toLowerCase().includes(name) && !title.includes(" or ");
  return isSaid ? "" : `${name}: `;
}

function detailOf(
  row: SectionRow,
  looked: boolean,
  markNumber: (id: string) => number | null,
  units: UnitPreferences,
): string {
  const name = figureName(row);
  const read =
    row.value === null ? "" : `${name}${signedLength(row.value, units, row.expandedUncertainty ?? 0)}`;
  const limit =
    row.limit === null
      ? ""
      : `limit ${row.limit.comparison === "<=" ? "at most" : "at least"} ${signedLength(row.limit.value, units)}`;
  const numbers = row.markIds.flatMap((id) => markNumber(id) ?? []);
  const marks =
    numbers.length === 0 ? "" : `${numbers.length === 1 ? "mark" : "marks"} ${numbers.join(", ")}`;
  const clean = row.result === "meets" && !read && looked ? "looked for, none found" : "";
  return [read, limit, marks, clean, ...row.missing.map((one) => sectionMissingText(one, markNumber))]
    .filter(Boolean)
    .join("; ");
}
