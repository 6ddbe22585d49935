import fc from "fast-check";
import { expect, it } from "vitest";
import { fieldText, inch, inputText, metric, parseLength } from "@/lib/units";

it("shows a number entered in the other unit as a shop reads it", () => {
  // 19 mm and 2 mm, on 25.4 mm to the inch.
  expect(fieldText("length", 19, inch)).toBe("0.748");
  expect(fieldText("length", 2, inch)).toBe("0.079");
  // 300 in/min is 7.62 m/min; 7 m/min is 275.59 in/min.
  expect(fieldText("wireFeed", 7.62, metric)).toBe("7.62");
  expect(fieldText("wireFeed", 7, inch)).toBe("275.59");
  expect(fieldText("length", null, inch)).toBe("");
});

it("leaves what was typed as it was typed", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 99_999 }), (thousandths) => {
      const read = parseLength(String(thousandths / 1000), { default: "in" });
      if (!read.ok) return;
      expect(fieldText("length", read.value, inch)).toBe(inputText("length", read.value, inch));
    }),
    { seed: 20261126 },
  );
});
