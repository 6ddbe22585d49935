import fc from "fast-check";
import { expect, it } from "vitest";
import { markSizeText } from "@/lib/report/length-text";
import { inch, metric } from "@/lib/units";

it("says under what a size lies where its error is larger than itself", () => {
  expect(markSizeText(0.3, metric, 1.2)).toBe("under 1.5 mm");
  expect(markSizeText(0.1, metric, 0.4)).toBe("under 0.5 mm");
  expect(markSizeText(0.3, inch, 1.2)).toBe("under 1/16 in");
  expect(markSizeText(3.2, metric, 0.3)).toBe("3.2 ± 0.3 mm");
});

it("never claims less than the size and its error together", () => {
  const size = fc.double({ min: 0.01, max: 20, noNaN: true });
  fc.assert(
    fc.property(size, size, (mm, more) => {
      const text = markSizeText(mm, metric, mm + more);
      expect(Number(/^under ([\d.]+) mm$/.exec(text)?.[1])).toBeGreaterThanOrEqual(2 * mm + more - 1e-9);
    }),
    { seed: 20261126 },
  );
});
