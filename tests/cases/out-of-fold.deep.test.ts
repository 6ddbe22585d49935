import { describe, expect, it } from "vitest";
import { runGrid } from "./diagnose/left-out";
import { brokenPromises } from "./reliability";
import { scenarios } from "./scenarios/scenarios";
import { publishedCases, toldOutOfFold } from "./told";

describe("the words for how likely, out of fold", () => {
  it("keep what they promise under weights fitted on other cases only", () => {
    const told = toldOutOfFold(runGrid(publishedCases), scenarios);
    expect(told.length).toBeGreaterThan(100);
    expect(brokenPromises(told)).toEqual([]);
  });
});
