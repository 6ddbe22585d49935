import { describe, expect, it } from "vitest";
import { diagnose, DiagnoseInputSchema } from "@/lib/diagnose";
import { benchCases } from "@/tests/cases/diagnose/bench-cases";

/** Beads as an instructor would set them, none from a document: the answer may not be plainly wrong. */
describe("bench cases", () => {
  it.each(benchCases)("$name ($basis)", ({ given, wanted }) => {
    const result = diagnose(DiagnoseInputSchema.parse(given));
    const three = result.ok ? result.value.causes.slice(0, 3).map(({ id }) => id) : [];
    expect(three.some((id) => wanted.includes(id))).toBe(true);
  });

  it("are named first in nine of ten", () => {
    const first = benchCases.filter(({ given, wanted }) => {
      const result = diagnose(DiagnoseInputSchema.parse(given));
      return result.ok && wanted.includes(result.value.causes[0]!.id);
    });
    expect(first.length).toBeGreaterThanOrEqual(0.9 * benchCases.length);
  });
});
