import { describe, expect, it } from "vitest";
import { tQuantile } from "@/lib/numeric/t-quantile";

describe("Student's t", () => {
  /** Student's table as every handbook prints it, two-sided (from memory). */
  it.each([
    [0.95, 1, 12.706],
    [0.95, 5, 2.571],
    [0.95, 10, 2.228],
    [0.95, 29, 2.045],
    [0.99, 10, 3.169],
    [0.9, 120, 1.658],
  ])("%f with %i degrees of freedom is %f", (confidence, df, printed) => {
    expect(tQuantile(confidence, df)).toBeCloseTo(printed, 3);
  });

  it("is none outside", () => {
    expect([tQuantile(0, 3), tQuantile(1, 3), tQuantile(0.95, 0)]).toEqual([NaN, NaN, NaN]);
  });
});
