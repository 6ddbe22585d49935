import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  answersOf,
  answerWord,
  choiceFields,
  emptyRunSetup,
  fieldRow,
  filterableFields,
  filterName,
  formLines,
  parseReading,
  quantityOf,
  RunSetupSchema,
  setupFieldNames,
  setupFields,
  setupParts,
  showReading,
  valueInText,
} from "@/lib/setup";
import { numberFields } from "./number-fields";
import { inch, inputText, metric } from "@/lib/units";

const stored = Object.keys(RunSetupSchema.shape).filter((key) => key !== "schemaVersion");

describe("one row for each field of a set-up", () => {
  it("no field without a row, no row without a field, in one order", () => {
    expect(setupFieldNames).toEqual(stored);
    expect(Object.keys(emptyRunSetup)).toEqual(["schemaVersion", ...setupFieldNames]);
    const dials = ["dialVoltage", "dialFeed"];
    expect([...numberFields, ...choiceFields, "electrodeClass", ...dials].sort()).toEqual([...stored].sort());
  });

  it("no two rows share a label, a column, a filter or a place on the form", () => {
    const rows = setupFieldNames.map(fieldRow);
    const once = (texts: readonly string[]) => expect(texts.length).toBe(new Set(texts).size);
    once(rows.map(({ label }) => label));
    once(rows.map(({ csv }) => csv));
    once(filterableFields.map(filterName));
    once(rows.map(({ form }) => form.join(" ")));
  });

  it("every field stands once on the form, and keys alone in their line", () => {
    const lines = setupParts.flatMap(formLines);
    expect(lines.flat().sort()).toEqual([...stored].sort());
    for (const line of lines)
      if (line.some((field) => fieldRow(field).control === "keys")) expect(line, line.join()).toHaveLength(1);
  });

  it("a name that ends in a unit has that unit in its column", () => {
    const endings: readonly (readonly [RegExp, string])[] = [
      [/MmPerMin$/, "(mm/min)"],
      [/MPerMin$/, "(m/min)"],
      [/LPerMin$/, "(L/min)"],
      [/Mm$/, "(mm)"],
      [/Deg$/, "(deg)"],
      [/S$/, "(s)"],
    ];
    for (const field of numberFields) {
      const ending = endings.find(([pattern]) => pattern.test(field));
      if (ending) expect(setupFields[field].csv, field).toContain(ending[1]);
    }
  });
});

describe("what a row says holds for what is stored", () => {
  it("bounds are those of the stored shape, at both ends", () => {
    for (const field of numberFields) {
      const { max, from } = { from: undefined, ...setupFields[field].bounds };
      const takes = (value: number) => RunSetupSchema.safeParse({ [field]: value }).success;
      expect([takes(max), takes(max + 1)], field).toEqual([true, false]);
      const least = from ?? 0;
      expect([takes(least), takes(least - 1)], field).toEqual([from !== undefined, false]);
    }
  });

  it("every answer is stored, has a word, and no two answers share one", () => {
    for (const field of choiceFields) {
      const answers = answersOf(field);
      for (const { value, label } of answers) {
        expect(RunSetupSchema.parse({ [field]: value })[field], field).toBe(value);
        expect(answerWord(field, value)).toBe(label);
        expect(valueInText(field, value, metric).toLowerCase()).toBe(label.toLowerCase());
      }
      expect(new Set(answers.map(({ label }) => label)).size, field).toBe(answers.length);
    }
    expect(answersOf("outdoors").map(({ value }) => value)).toEqual([false, true]);
  });

  it("a number written into its field reads back as itself, in either system", () => {
    for (const field of numberFields) {
      const { max } = setupFields[field].bounds;
      const values =
        quantityOf(field).input === "plain"
          ? fc.integer({ min: 1, max: Math.floor(max) })
          : fc
              .double({ min: Math.min(1, max / 4), max: max / 2, noNaN: true })
              .map((n) => Number(n.toFixed(3)));
      fc.assert(
        fc.property(values, fc.constantFrom(metric, inch), (value, units) => {
          // The size on the spool is what is kept of a wire, so a size near one becomes it.
          if (field === "electrodeDiameterMm") return;
          const typed = inputText(quantityOf(field).input, value, units);
          const read = parseReading(field, typed, units);
          expect(read.ok && Math.abs(read.value - value) < 1e-6 * value, `${field} ${typed}`).toBe(true);
          expect(showReading(units)(field, value)).not.toBe("");
        }),
        { seed: 20261126, numRuns: 60 },
      );
    }
  });
});
