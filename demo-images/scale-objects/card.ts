import { noise2 } from "../noise/noise";
import { roundedCover, type ScaleObject } from "./scale-object";

export const CARD_CODE = 2;
/** ISO/IEC 7810 ID-1: 85.60 x 53.98 x 0.76 mm, corner radius 3.18 mm (from memory). */
export const ID1 = { lengthMm: 85.6, widthMm: 53.98, thicknessMm: 0.76, radiusMm: 3.18 } as const;

/** A plain plastic card of ID-1 size with one pale band; it belongs to nobody. */
export function createCard(): ScaleObject {
  const halfA = ID1.lengthMm / 2;
  const halfB = ID1.widthMm / 2;
  return {
    kind: "card",
    lengthMm: ID1.lengthMm,
    widthMm: ID1.widthMm,
    thicknessMm: ID1.thicknessMm,
    code: CARD_CODE,
    cover: (a, b, step) => roundedCover(a, b, halfA, halfB, ID1.radiusMm, step),
    ink: (a, b, step) =>
      Math.min(1, Math.max(0, (5.5 - Math.abs(b - 14 - 0.00004 * a * a * a)) / step + 0.5)),
    relief: (a, b) => 0.0006 * noise2(a * 1.4, b * 1.4, 71) + 0.0004 * noise2(a * 0.3, b * 6, 72),
    keyPoints: [
      { name: "corner 1", at: [-halfA, -halfB] },
      { name: "corner 2", at: [halfA, -halfB] },
      { name: "corner 3", at: [halfA, halfB] },
      { name: "corner 4", at: [-halfA, halfB] },
    ],
    sizes: { lengthMm: ID1.lengthMm, widthMm: ID1.widthMm, cornerRadiusMm: ID1.radiusMm },
  };
}
