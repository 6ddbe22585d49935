import { describe, expect, it } from "vitest";
import { amountText } from "@/lib/report/amount-text";
import { inch, metric } from "@/lib/units";

describe("an amount", () => {
  const window = {
    quantity: "window",
    valueSi: 12.7,
    toSi: 25.4,
    unitKind: "small-length",
    relativeError: null,
  } as const;

  it("says the unit of a span once", () => {
    expect(amountText(window, metric)).toBe("window 12.7 to 25.4 mm");
    expect(amountText({ ...window, unitKind: "voltage", valueSi: 24, toSi: 30 }, metric)).toBe(
      "window 24 to 30 V",
    );
    expect(amountText(window, inch)).toBe("window 0.5 to 1 in");
  });
  it("says its error beside it", () => {
    const amps = { quantity: "arc current", valueSi: 142, unitKind: "current", relativeError: 0.15 } as const;
    expect(amountText(amps, metric)).toBe("arc current 142 A, give or take 15 %");
  });
});
