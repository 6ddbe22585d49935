import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { shapeToSvg } from "@/lib/exchange/shape-to-svg";
import { arbShape } from "../../arbitraries";
import { readSvg } from "./read-back";

const frame = { widthPx: 600, heightPx: 400 };
const read = (svg: string) => readSvg(svg, frame.widthPx, frame.heightPx);

describe("shapes as SVG", () => {
  it("come back the same", () => {
    fc.assert(
      fc.property(arbShape, (shape) => {
        expect(read(shapeToSvg(shape, frame))).toEqual(shape);
      }),
    );
  });

  it("also with every digit of a double", () => {
    const x = fc.double({ min: -100_000, max: 100_000, noNaN: true }).map((n) => n + 0);
    const shape = fc.record({
      kind: fc.constant("line" as const),
      points: fc.array(fc.record({ x, y: x }), { minLength: 2, maxLength: 500 }),
    });
    fc.assert(
      fc.property(shape, (line) => {
        expect(read(shapeToSvg(line, frame))).toEqual(line);
      }),
      { numRuns: 50 },
    );
  });

  it("the recommendation's example: a circle of 100 px in the middle of a picture of 600 by 400", () => {
    // Read in the vocabulary's note on SvgSelector; the view box is ours.
    expect(shapeToSvg({ kind: "point", at: { x: 300, y: 200 }, radius: 100 }, frame)).toBe(
      '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 600 400"><circle cx="300" cy="200" r="100"/></svg>',
    );
  });
});
