import { markerCorners, stripLayout, stripMarkerIds, type StripRect, type StripText } from "@/lib/strip";
import { distanceToNumber, numberWidth } from "./stroke-digits";
import { roundedCover, type ScaleObject } from "./scale-object";

export const STRIP_CODE = 4;
/** Half the width of a digit's stroke, mm: our own drawing of the layout's texts. */
const STROKE_HALF_MM = 0.14;

/** Rectangles by whole millimetre along the strip, so that a point looks at the few that can cover it. */
function byMillimetre(rects: readonly StripRect[], lengthMm: number): readonly (readonly StripRect[])[] {
  return Array.from({ length: Math.ceil(lengthMm) }, (_, mm) =>
    rects.filter(({ x, width }) => x < mm + 1.5 && x + width > mm - 0.5),
  );
}

/** Length that the spans [a, a + width] and [at - half, at + half] share. */
const shared = (a: number, width: number, at: number, half: number): number =>
  Math.max(0, Math.min(a + width, at + half) - Math.max(a, at - half));

/** Share of a window one step wide about (x, y) that lies in the rectangles. */
function rectShare(rects: readonly StripRect[], x: number, y: number, step: number): number {
  let area = 0;
  for (const rect of rects)
    area += shared(rect.x, rect.width, x, step / 2) * shared(rect.y, rect.height, y, step / 2);
  return Math.min(1, area / (step * step));
}

function textInk(texts: readonly StripText[], x: number, y: number, step: number): number {
  for (const { text, x: middle, y: foot, heightMm } of texts) {
    const letter = heightMm / 2;
    if (Math.abs(x - middle) > letter * (numberWidth(text) / 2 + 1)) continue;
    if (y > foot + letter || y < foot - 3 * letter) continue;
    const d =
      letter * distanceToNumber(text, (x - middle) / letter + numberWidth(text) / 2, (foot - y) / letter);
    return Math.min(1, Math.max(0, (STROKE_HALF_MM - d) / step + 0.5));
  }
  return 0;
}

/** The project's printed strip on paper, drawn from the same layout that the page prints and the finder reads. */
export function createStrip(): ScaleObject {
  const { lengthMm, widthMm, ink, texts, markers } = stripLayout();
  const rects = byMillimetre(ink, lengthMm);
  const corner = (id: number, i: number): readonly [number, number] => {
    const { x, y } = markerCorners(id)![i]!;
    return [x - lengthMm / 2, widthMm / 2 - y];
  };
  return {
    kind: "strip",
    lengthMm,
    widthMm,
    thicknessMm: 0.12,
    code: STRIP_CODE,
    cover: (a, b, step) => roundedCover(a, b, lengthMm / 2, widthMm / 2, 0.2, step),
    ink(a, b, step) {
      const x = a + lengthMm / 2;
      const y = widthMm / 2 - b;
      const near = rects[Math.min(rects.length - 1, Math.max(0, Math.floor(x)))]!;
      return Math.max(rectShare(near, x, y, step), textInk(texts, x, y, step));
    },
    relief: () => 0,
    keyPoints: stripMarkerIds.flatMap((id) =>
      [0, 1, 2, 3].map((i) => ({ name: `marker ${id} corner ${i}`, at: corner(id, i) })),
    ),
    sizes: { markerMm: markers[0]!.sideMm, lengthMm, widthMm },
  };
}
