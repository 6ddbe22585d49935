import { getDocument, OPS } from "pdfjs-dist/legacy/build/pdf.mjs";
import { describe, expect, it } from "vitest";
import { stripPapers, stripPdf, type StripPaper } from "@/lib/pdf";
import { STRIP_PLACE } from "@/lib/pdf/strip-pdf";
import { stripLayout } from "@/lib/strip";

interface Rect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

type Matrix = readonly [number, number, number, number, number, number];

const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[2] * n[1],
  m[1] * n[0] + m[3] * n[1],
  m[0] * n[2] + m[2] * n[3],
  m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4],
  m[1] * n[4] + m[3] * n[5] + m[5],
];

/** The rectangles filled on page 1, as an independent reader of PDF sees them, in mm from the page's top left. */
async function filledRects(bytes: Uint8Array): Promise<{ rects: Rect[]; widthMm: number; heightMm: number }> {
  const pdf = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const page = await pdf.getPage(1);
  const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
  const toMm = (points: number) => (points * 25.4) / 72;
  const list = await page.getOperatorList();
  const stack: Matrix[] = [];
  let now: Matrix = [1, 0, 0, 1, 0, 0];
  let path: Rect[] = [];
  const rects: Rect[] = [];
  list.fnArray.forEach((fn, i) => {
    const args = list.argsArray[i] as unknown[];
    if (fn === OPS.save) stack.push(now);
    if (fn === OPS.restore) now = stack.pop() ?? now;
    if (fn === OPS.transform) now = times(now, args as unknown as Matrix);
    if (fn === OPS.constructPath) {
      const [ops, numbers] = args as [number[], number[]];
      let at = 0;
      for (const op of ops) {
        if (op === OPS.rectangle) {
          const [x = 0, y = 0, w = 0, h = 0] = numbers.slice(at, at + 4);
          const a = [now[0] * x + now[2] * y + now[4], now[1] * x + now[3] * y + now[5]] as const;
          const b = [
            now[0] * (x + w) + now[2] * (y + h) + now[4],
            now[1] * (x + w) + now[3] * (y + h) + now[5],
          ] as const;
          path.push({
            x: toMm(Math.min(a[0], b[0]) - left),
            y: toMm(top - Math.max(a[1], b[1])),
            width: toMm(Math.abs(b[0] - a[0])),
            height: toMm(Math.abs(b[1] - a[1])),
          });
          at += 4;
        } else at += op === OPS.closePath ? 0 : op === OPS.curveTo ? 6 : 2;
      }
    }
    if (fn === OPS.fill || fn === OPS.eoFill) {
      rects.push(...path);
      path = [];
    }
    if (fn === OPS.stroke || fn === OPS.endPath) path = [];
  });
  await pdf.destroy();
  return { rects, widthMm: toMm(right - left), heightMm: toMm(top - bottom) };
}

/** Largest difference of any edge, mm. */
const apart = (a: Rect, b: Rect): number =>
  Math.max(
    Math.abs(a.x - b.x),
    Math.abs(a.y - b.y),
    Math.abs(a.x + a.width - b.x - b.width),
    Math.abs(a.y + a.height - b.y - b.height),
  );

describe.each(Object.keys(stripPapers) as StripPaper[])("the printed strip on %s", (paper) => {
  it("has every marker module, tick and bar within 0.01 mm of its place and size, and nothing else", async () => {
    const { rects, widthMm, heightMm } = await filledRects(await stripPdf(paper, "2026-01-01T00:00:00.000Z"));
    const layout = stripLayout();
    const wanted = [...layout.ink, ...layout.checkBars.map(({ rect }) => rect)].map((rect) => ({
      ...rect,
      x: rect.x + STRIP_PLACE.xMm,
      y: rect.y + STRIP_PLACE.yMm,
    }));
    expect(rects).toHaveLength(wanted.length);
    const worst = wanted.map((rect, i) => apart(rect, rects[i]!));
    expect(Math.max(...worst)).toBeLessThan(0.01);
    expect(widthMm).toBeCloseTo(stripPapers[paper].widthMm, 3);
    expect(heightMm).toBeCloseTo(stripPapers[paper].heightMm, 3);
  });

  it("lies whole on the page, clear of a printer's margin of 6 mm", async () => {
    const { rects, widthMm, heightMm } = await filledRects(await stripPdf(paper, "2026-01-01T00:00:00.000Z"));
    for (const { x, y, width, height } of rects) {
      expect(x).toBeGreaterThan(6);
      expect(y).toBeGreaterThan(6);
      expect(x + width).toBeLessThan(widthMm - 6);
      expect(y + height).toBeLessThan(heightMm - 6);
    }
  });

  it("is the same file every time", async () => {
    const [one, two] = await Promise.all([1, 2].map(() => stripPdf(paper, "2026-01-01T00:00:00.000Z")));
    expect(Buffer.from(one!).equals(Buffer.from(two!))).toBe(true);
  });
});

// The two bars are the lengths they say: ISO 31 millimetres and the international inch of 25.4 mm.
it("its bars are 100 mm and 4 in long", () => {
  const [metric, inch] = stripLayout().checkBars;
  expect(metric).toMatchObject({ nominalMm: 100, rect: { width: 100 }, label: "100 mm" });
  expect(inch).toMatchObject({ nominalMm: 4 * 25.4, rect: { width: 4 * 25.4 }, label: "4 in" });
});
