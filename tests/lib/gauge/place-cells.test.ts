import { describe, expect, it } from "vitest";
import { placeCells } from "@/lib/gauge";

const sheet = { lines: 6, parts: 4 };
const texts = (found: ReturnType<typeof placeCells>) =>
  found.cells.map(({ line, part, text }) => `${line}.${part}=${text}`);

describe("what is pasted into a study's sheet", () => {
  it("lies on the lines as it is, from the cell that was pressed", () => {
    const block = [
      ["a", "b"],
      ["c", "d"],
    ];
    expect(texts(placeCells(block, { line: 1, part: 2 }, sheet))).toEqual([
      "1.2=a",
      "1.3=b",
      "2.2=c",
      "2.3=d",
    ]);
  });

  it("is turned where the parts go down its side", () => {
    const down = [0, 1, 2, 3].map((part) => [0, 1, 2, 3, 4, 5].map((line) => `${line}/${part}`));
    const { cells, beyond } = placeCells(down, { line: 0, part: 0 }, sheet);
    expect(cells).toHaveLength(24);
    expect(cells.every(({ line, part, text }) => text === `${line}/${part}`)).toBe(true);
    expect(beyond).toBe(0);
  });

  it("runs on in the order of the bench where it is one column or one row", () => {
    const column = ["1", "2", "3"].map((text) => [text]);
    expect(texts(placeCells(column, { line: 0, part: 2 }, sheet))).toEqual(["0.2=1", "0.3=2", "1.0=3"]);
    expect(texts(placeCells([["1", "2", "3"]], { line: 0, part: 3 }, sheet))).toEqual([
      "0.3=1",
      "1.0=2",
      "1.1=3",
    ]);
  });

  it("counts what has no place", () => {
    expect(placeCells([["1", "2", "3"]], { line: 5, part: 2 }, sheet).beyond).toBe(1);
    expect(
      placeCells(
        [
          ["a", "b"],
          ["c", "d"],
        ],
        { line: 5, part: 3 },
        sheet,
      ).beyond,
    ).toBe(3);
    expect(placeCells([], { line: 0, part: 0 }, sheet)).toEqual({ cells: [], beyond: 0 });
  });
});
