import { expect, it } from "vitest";
import { judge, JudgeInputSchema } from "@/lib/accept";
import { rowValueText } from "@/lib/report";
import { inch, metric } from "@/lib/units";

/** An invented weld: a throat of 5 asked for, read thinner and thicker. ISO 5817 1.20 and 1.21 hold shortfall and excess. */
const textsOf = (throat: number, units = metric) => {
  const result = judge(
    JudgeInputSchema.parse({
      criteriaId: "iso-5817-c",
      weld: { kind: "fillet", thicknessMm: 8, throatMm: 5, lengthMm: 200 },
      beadReadings: { throat },
      lookedFor: "all",
    }),
  );
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value.rows.map((row) => rowValueText(row, units)).filter(Boolean);
};

it("says on which side of what was asked for a throat lies", () => {
  expect(textsOf(4)).toContain("read −1 mm");
  expect(textsOf(4)).toContain("read 1 mm");
  expect(textsOf(6)).toContain("read −1 mm");
  expect(textsOf(4, inch).some((text) => text.startsWith("read −0.039"))).toBe(true);
});
