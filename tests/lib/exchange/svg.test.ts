import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { shapeToSvg } from "@/lib/exchange/shape-to-svg";
import { svgToShape } from "@/lib/exchange/svg-to-shape";
import { arbShape } from "../../arbitraries";

const frame = { widthPx: 600, heightPx: 400 };
const NS = 'xmlns="http://www.w3.org/2000/svg"';
const read = (text: string) => svgToShape(text, frame);
const codeOf = (text: string) => {
  const result = read(text);
  return result.ok ? result.value : result.issues[0]?.code;
};

describe("shapes as SVG", () => {
  it("come back the same", () => {
    fc.assert(
      fc.property(arbShape, (shape) => {
        expect(read(shapeToSvg(shape, frame))).toEqual({ ok: true, value: shape });
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
        expect(read(shapeToSvg(line, frame))).toEqual({ ok: true, value: line });
      }),
      { numRuns: 50 },
    );
  });
});

describe("SVG of others", () => {
  it("the recommendation's example: a circle of 100 px in the middle of a picture of 600 by 400", () => {
    // Read in the vocabulary's note on SvgSelector.
    const middle = { kind: "point", at: { x: 300, y: 200 }, radius: 100 };
    expect(codeOf(`<svg ${NS}><circle cx="300" cy="200" r="100"/></svg>`)).toEqual(middle);
    expect(
      codeOf('<svg:svg xmlns:svg="x"><svg:circle cx="300" cy="200" r="100"></svg:circle></svg:svg>'),
    ).toEqual(middle);
  });

  it("is scaled to the full size of the picture", () => {
    const half = { kind: "point", at: { x: 300, y: 200 }, radius: 100 };
    expect(codeOf(`<svg viewBox="0 0 300 200"><circle cx="150" cy="100" r="50"/></svg>`)).toEqual(half);
    expect(codeOf(`<svg width="300px" height="200"><circle cx="150" cy="100" r="50"/></svg>`)).toEqual(half);
    expect(codeOf(`<svg viewBox="10 20 300 200"><circle cx="160" cy="120" r="50"/></svg>`)).toEqual(half);
    expect(codeOf(`<svg viewBox="0 0 300 300"><circle cx="150" cy="100" r="50"/></svg>`)).toBe("svg-shape");
  });

  const outline = {
    kind: "outline",
    points: [
      { x: 1, y: 2 },
      { x: 4, y: 2 },
      { x: 4, y: 7 },
      { x: 1, y: 7 },
    ],
  };
  it.each([
    '<rect x="1" y="2" width="3" height="5"/>',
    '<path d="M1 2 4 2 4 7 1 7Z"/>',
    '<path d="m1,2h3v5h-3z"/>',
    '<path d="M1,2H4V7L1,7z"/>',
    "<polygon points='1,2 4,2,4,7 1 7' style='fill:red' class=\"x\"/>",
    '<g><polygon points="1 2 4 2 4 7 1 7"/></g>',
  ])("%s is an outline", (element) => expect(codeOf(`<svg ${NS}>${element}</svg>`)).toEqual(outline));

  it("reads numbers as SVG 1.1 writes them", () => {
    expect(codeOf('<svg><polyline points="1-2.5.5e1+3"/></svg>')).toEqual({
      kind: "line",
      points: [
        { x: 1, y: -2.5 },
        { x: 5, y: 3 },
      ],
    });
    expect(codeOf('<?xml version="1.0"?>\n<svg> <path d="M3 4"/> </svg>\n')).toEqual({
      kind: "point",
      at: { x: 3, y: 4 },
      radius: null,
    });
  });
});

describe("hostile SVG", () => {
  const circle = '<circle cx="5" cy="6" r="2"/>';
  it.each([
    [`<svg>${circle}<script/></svg>`, "svg-refused"],
    [`<svg>${circle}<SCRIPT/></svg>`, "svg-refused"],
    [`<svg><script>alert(1)</script>${circle}</svg>`, "svg-unreadable"],
    [`<!DOCTYPE svg [<!ENTITY a "b">]><svg>${circle}</svg>`, "svg-refused"],
    [`<!doctype svg><svg>${circle}</svg>`, "svg-refused"],
    ['<svg><circle cx="&a;" cy="6" r="2"/></svg>', "svg-refused"],
    [`<svg>${circle}<foreignObject></foreignObject></svg>`, "svg-refused"],
    [`<svg>${circle}<image href="http://example.org/"/></svg>`, "svg-refused"],
    [`<svg><a xlink:href="http://example.org/">${circle}</a></svg>`, "svg-refused"],
    [`<svg><use href="#x"/></svg>`, "svg-refused"],
    [`<svg><g xlink:href="x">${circle}</g></svg>`, "svg-refused"],
    ['<svg><circle cx="5" cy="6" r="2" onload="x"/></svg>', "svg-refused"],
    [`<svg onload="x">${circle}</svg>`, "svg-refused"],
    [`<svg>${circle}<animate/></svg>`, "svg-refused"],
    [`<svg>${circle}<style/></svg>`, "svg-refused"],
    [`<svg><![CDATA[x]]>${circle}</svg>`, "svg-refused"],
    [`<svg><!-- x -->${circle}</svg>`, "svg-refused"],
    [`<svg><?xml-stylesheet href="x"?>${circle}</svg>`, "svg-refused"],
    [`<svg>${" ".repeat(50_000)}${circle}</svg>`, "svg-too-large"],
    [`<svg>${"<g>".repeat(500)}${circle}${"</g>".repeat(500)}</svg>`, "svg-unreadable"],
    [`<svg>${circle}`, "svg-unreadable"],
    [`<svg>${circle}</svg><svg/>`, "svg-unreadable"],
    [`<svg><svg>${circle}</svg></svg>`, "svg-unreadable"],
    [`<svg><g>${circle}</svg></g>`, "svg-unreadable"],
    [`<html>${circle}</html>`, "svg-unreadable"],
    ["", "svg-unreadable"],
    ["circle", "svg-unreadable"],
    ['<svg><circle cx="5" cx="6" cy="6" r="2"/></svg>', "svg-unreadable"],
    ['<svg><circle cx="five" cy="6" r="2"/></svg>', "svg-unreadable"],
    ['<svg><polyline points="1,2,3"/></svg>', "svg-unreadable"],
    ['<svg><path d="10 20"/></svg>', "svg-unreadable"],
    [`<svg viewBox="0 0 0 10">${circle}</svg>`, "svg-unreadable"],
    ['<svg><polyline points="1,2"/></svg>', "svg-shape"],
    ['<svg><circle cx="5" cy="6" r="-2"/></svg>', "svg-shape"],
    ['<svg><circle cx="5e9" cy="6" r="2"/></svg>', "svg-shape"],
    [`<svg><polyline points="${"1,2 ".repeat(501)}"/></svg>`, "svg-shape"],
    ['<svg><path d="M1 1C2 2 3 3 4 4"/></svg>', "svg-shape"],
    ['<svg><path d="M1 1L2 2M3 3L4 4"/></svg>', "svg-shape"],
    ['<svg><path d="M1 1L2 2ZL4 4"/></svg>', "svg-shape"],
    [`<svg><g transform="scale(2)">${circle}</g></svg>`, "svg-shape"],
    [`<svg>${circle}${circle}</svg>`, "svg-shape"],
    ["<svg/>", "svg-shape"],
    ['<svg><ellipse cx="1" cy="1" rx="2" ry="3"/></svg>', "svg-shape"],
  ])("%s", (text, code) => expect(codeOf(text)).toBe(code));

  it("no text at all makes it throw or take long", () => {
    const bits = fc.constantFrom(
      "<svg",
      "<svg>",
      "</svg>",
      "<path d=",
      '"',
      "'",
      ">",
      "/>",
      "M1 2",
      "=",
      " ",
      "<g ",
      "a",
      "<",
      "1,2 ",
    );
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: bits, maxLength: 60 }), fc.string({ unit: "binary" })),
        (text) => {
          expect(read(text)).toHaveProperty("ok");
        },
      ),
      { numRuns: 2000 },
    );
    const start = performance.now();
    for (const bit of [" ", "a ", 'a="" ', "<g>", "a=", "=", "<"])
      read(`<svg ${bit.repeat(39_000 / bit.length)}`);
    read(`<svg><polyline points="${"1".repeat(39_000)}e"/></svg>`);
    expect(performance.now() - start).toBeLessThan(5_000);
  });
});
