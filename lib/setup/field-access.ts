import type { Result } from "@/lib/base";
import type { UnitPreferences, UnitsIssue } from "@/lib/units";
import {
  setupFields,
  type ChoiceField,
  type FilterableField,
  type NumberField,
  type SetupField,
  type SetupFieldRow,
  type SetupFilterName,
  type SetupPart,
} from "./fields";
import { quantityKinds, type QuantityKind } from "./quantity-kinds";
import { inText } from "./words";

/** Every field, in the order of the table. */
export const setupFieldNames = Object.keys(setupFields) as readonly SetupField[];

export const fieldRow = (field: SetupField): SetupFieldRow => setupFields[field];
export const fieldLabel = (field: SetupField): string => setupFields[field].label;

/** What a field is called inside a sentence. */
export const fieldInText = (field: SetupField): string => inText(fieldLabel(field));

export const choiceFields = setupFieldNames.filter(
  (field): field is ChoiceField => "words" in setupFields[field],
);
export const filterableFields = setupFieldNames.filter(
  (field): field is FilterableField => "filter" in setupFields[field],
);
export const filterName = <F extends FilterableField>(field: F): SetupFilterName<F> =>
  setupFields[field].filter;

/** How a field's number is asked for, read and written. */
export function quantityOf(field: NumberField): QuantityKind {
  return quantityKinds[setupFields[field].quantity];
}

/** What was typed into a field, in its SI unit and within its bounds. Issues: those of lib/units. */
export function parseReading(
  field: NumberField,
  typed: string,
  units: UnitPreferences,
): Result<number, UnitsIssue> {
  return quantityOf(field).parse(typed, units, setupFields[field].bounds);
}

/** The answers of a closed question in their order; the boolean "no" stands first. */
export function answersOf(
  field: ChoiceField,
): readonly { readonly value: string | boolean; readonly label: string }[] {
  return Object.entries(setupFields[field].words).map(([key, label]) => ({
    value: field === "outdoors" ? key === "true" : key,
    label,
  }));
}

/** An answer in the words of the form; what is no answer of the field stands as it is. */
export function answerWord(field: ChoiceField, value: string | boolean): string {
  const words: Readonly<Record<string, string>> = setupFields[field].words;
  return words[String(value)] ?? String(value);
}

/** A known value as a sheet states it: an answer in running text, a number in the person's units. */
export function valueInText(
  field: SetupField,
  value: string | number | boolean,
  units: UnitPreferences,
): string {
  const row = fieldRow(field);
  if (row.control === "class" || row.control === "text") return String(value);
  if (row.control !== "number") return inText(row.words[String(value)] ?? String(value));
  const kind: QuantityKind = quantityKinds[row.quantity];
  return (kind.state ?? kind.show)(Number(value), units);
}

/** The lines of one part of the form, each with the fields that stand in it. */
export function formLines(part: SetupPart): readonly (readonly SetupField[])[] {
  const fields = setupFieldNames.filter((field) => setupFields[field].form[0] === part);
  const lines = [...new Set(fields.map((field) => setupFields[field].form[1]))].sort((a, b) => a - b);
  return lines.map((line) =>
    fields
      .filter((field) => setupFields[field].form[1] === line)
      .sort((a, b) => setupFields[a].form[2] - setupFields[b].form[2]),
  );
}

export const partFields = (part: SetupPart): readonly SetupField[] => formLines(part).flat();
