import { describe, expect, it } from "vitest";
import { pastedCells, readCell } from "@/lib/gauge";

describe("a cell", () => {
  it.each([
    ["0.29", 0.29],
    ["-0,56", -0.56],
    ["\u22120.5", -0.5],
    [" 7 ", 7],
    ["", null],
    ["7 mm", null],
    ["1.2.3", null],
    ["-", null],
    ["1,234.5", null],
  ])("%j", (text, value) => expect(readCell(text, "mm")).toBe(value));

  it("is a length in inches where those are typed", () => {
    expect(readCell("0.25", "in")).toBeCloseTo(6.35, 12);
    expect(readCell("90", "deg")).toBe(90);
  });
});

describe("what is pasted", () => {
  it("comes apart at tabs, semicolons or blanks, with empty cells kept where tabs part them", () => {
    expect(pastedCells("1\t\t3\r\n4\t5\t6\r\n")).toEqual([
      ["1", "", "3"],
      ["4", "5", "6"],
    ]);
    expect(pastedCells("0,1; 0,2\n0,3; 0,4")).toEqual([
      ["0,1", "0,2"],
      ["0,3", "0,4"],
    ]);
    expect(pastedCells(" 1  2\n3 4\n\n")).toEqual([
      ["1", "2"],
      ["3", "4"],
    ]);
  });
});
