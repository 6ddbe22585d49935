import { describe, expect, it } from "vitest";
import { parseReading } from "@/components/setup/parse-reading";
import { BeadReadingSchema } from "@/lib/assess/bead";
import { beadQuantities } from "@/lib/measure";
import { metric, unitsSentence } from "@/lib/units";

const sentence = (quantity: (typeof beadQuantities)[number], text: string): string => {
  const read = parseReading(quantity, text, metric);
  return read.ok ? `read as ${read.value}` : read.issues.map(unitsSentence).join(" ");
};

describe("a reading below nought", () => {
  it("of a convexity is told to be read as a throat, never as the same without its sign", () => {
    expect(sentence("convexity", "-0.8")).toBe(
      "“-0.8” is below zero. The face is hollow then: leave the convexity out and read the throat.",
    );
    expect(sentence("throat", "-4")).toBe("“-4” is below zero. Type it without the minus sign.");
    expect(sentence("toe-angle", "-4")).toContain("without the minus sign");
    expect(sentence("convexity", "0")).toBe("read as 0");
  });

  // Whatever way it would come, by hand, by the HTTP API or in an archive: no screen or paper has to print it.
  it.each(beadQuantities)("is stored of no quantity: %s", (quantity) => {
    const reading = { quantity, value: 0, instrument: "gauge", resolution: 0.5 };
    expect(BeadReadingSchema.safeParse(reading).success).toBe(true);
    for (const value of [-1e-9, -0.8, NaN])
      expect(BeadReadingSchema.safeParse({ ...reading, value }).success, String(value)).toBe(false);
  });
});
