import { describe, expect, it } from "vitest";
import { BeadReadingsSchema } from "@/lib/accept";
import { gaugeIds, missingQuantities } from "@/lib/accept/verdict";
import { gaugeFor } from "@/lib/accept/rule";
import { BeadReadingSchema } from "@/lib/assess/bead";
import { unitOfName } from "@/lib/case/unit-of-name";
import {
  beadQuantities,
  beadQuantityRows,
  isJudgedName,
  judgedQuantities,
  quantityInText,
  quantityNamed,
} from "@/lib/measure";
import { missingWords } from "@/lib/report";
import { figureWords } from "@/lib/report/reading-words";

const rows = beadQuantities.map((quantity) => beadQuantityRows[quantity]);

describe("one row for each reading of a bead", () => {
  it("no reading without a row, no row without a reading: as kept, and as the judge takes it", () => {
    expect(BeadReadingSchema.shape.quantity.options).toEqual(beadQuantities);
    expect(Object.keys(BeadReadingsSchema.shape)).toEqual(
      rows.flatMap(({ name }) => (name === null ? [] : [name])),
    );
  });

  it("no two share a name, a label or a column", () => {
    for (const texts of [
      rows.map(({ name }) => name),
      rows.map(({ label }) => label),
      rows.map(({ csv }) => csv),
    ])
      expect(new Set(texts).size).toBe(rows.length);
  });

  it("a name leads back to its row, and nothing else does", () => {
    for (const quantity of judgedQuantities) {
      const { name } = beadQuantityRows[quantity];
      expect(isJudgedName(name)).toBe(true);
      expect(quantityNamed(name)).toBe(quantity);
    }
    for (const other of ["", "leg-1", "weld-length", "legMm", "toString", "constructor"])
      expect(isJudgedName(other), other).toBe(false);
  });

  it("the judge takes a size in the row's unit and refuses it in another", () => {
    const size = (unit: string) => ({ unit, value: 5, expandedUncertainty: 0, source: "gauge" });
    for (const quantity of judgedQuantities) {
      const { name, unit, csv } = beadQuantityRows[quantity];
      const takes = (one: string) => BeadReadingsSchema.safeParse({ [name]: size(one) }).success;
      expect([takes(unit), takes(unit === "mm" ? "deg" : "mm")], name).toEqual([true, false]);
      expect(unitOfName(name)).toBe(unit === "mm" ? "mm" : "degrees");
      expect(csv).toContain(`(${unit})`);
    }
  });

  it("what is missing is named as the reading is, with a gauge there is", () => {
    for (const quantity of beadQuantities) {
      expect(missingQuantities).toContain(quantity);
      expect(missingWords[quantity]).toBe(quantityInText(quantity));
      expect(gaugeFor[quantity]).toBe(beadQuantityRows[quantity].gauge);
      expect(gaugeIds).toContain(beadQuantityRows[quantity].gauge);
    }
    for (const quantity of judgedQuantities)
      expect(figureWords(beadQuantityRows[quantity].name, () => null)).toBe(quantityInText(quantity));
  });
});
