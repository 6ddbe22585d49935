import { MM_PER_INCH } from "@/lib/base";
import { noise2 } from "../noise/noise";
import { distanceToNumber, numberWidth } from "./stroke-digits";
import { bandShare, roundedCover, type ScaleObject } from "./scale-object";

export const RULE_CODE = 1;
const LINE_HALF_MM = 0.08;
const SIXTEENTH_MM = MM_PER_INCH / 16;

function millimetreTick(n: number): number {
  return n % 10 === 0 ? 6.4 : n % 5 === 0 ? 4.8 : 3.2;
}

function sixteenthTick(n: number): number {
  return n % 16 === 0 ? 7 : n % 8 === 0 ? 5.8 : n % 4 === 0 ? 4.8 : n % 2 === 0 ? 3.8 : 2.8;
}

function tickInk(
  from0: number,
  inward: number,
  pitch: number,
  last: number,
  tick: (n: number) => number,
  step: number,
): number {
  const n = Math.round(from0 / pitch);
  if (n < 0 || n > last) return 0;
  return (
    bandShare(from0 - n * pitch, LINE_HALF_MM, step) *
    Math.min(1, Math.max(0, (tick(n) - inward) / step + 0.5))
  );
}

function numberInk(text: string, x: number, y: number, letterMm: number, step: number): number {
  const d = distanceToNumber(text, x / letterMm + numberWidth(text) / 2, y / letterMm) * letterMm;
  return Math.min(1, Math.max(0, (0.14 - d) / step + 0.5));
}

/** A steel rule: millimetres along the lower edge, sixteenths of an inch along the upper; both start 5 mm in. */
export function createRule(lengthMm: number): ScaleObject {
  const widthMm = 19;
  const halfA = lengthMm / 2 + 5;
  const halfB = widthMm / 2;
  const zero = -lengthMm / 2;
  const lastInch = Math.floor(lengthMm / SIXTEENTH_MM);
  return {
    kind: "rule",
    lengthMm: lengthMm + 10,
    widthMm,
    thicknessMm: 0.8,
    code: RULE_CODE,
    cover: (a, b, step) => roundedCover(a, b, halfA, halfB, 1.2, step),
    ink(a, b, step) {
      const along = a - zero;
      const low = b + halfB;
      const high = halfB - b;
      let ink = low < 7.5 ? tickInk(along, low, 1, lengthMm, millimetreTick, step) : 0;
      if (high < 8) ink = Math.max(ink, tickInk(along, high, SIXTEENTH_MM, lastInch, sixteenthTick, step));
      if (low > 6.6 && low < 9.6) {
        const n = Math.round(along / 10);
        if (n > 0 && n * 10 <= lengthMm)
          ink = Math.max(ink, numberInk(String(n * 10), along - n * 10, low - 6.9, 1.05, step));
      }
      if (high > 7.2 && high < 9.9) {
        const n = Math.round(along / MM_PER_INCH);
        if (n > 0 && n * MM_PER_INCH <= lengthMm)
          ink = Math.max(ink, numberInk(String(n), along - n * MM_PER_INCH - 1.7, 9.8 - high, 1.1, step));
      }
      return ink;
    },
    relief: (a, b) => 0.0009 * noise2(a * 0.08, b * 9, 77) + 0.0006 * noise2(a * 2, b * 2, 78),
    keyPoints: Array.from({ length: Math.floor(lengthMm / 10) + 1 }, (_, n) => ({
      name: `${n * 10} mm`,
      at: [zero + n * 10, -halfB] as const,
    })),
    sizes: { graduatedLengthMm: lengthMm, millimetrePitchMm: 1, inchPitchMm: SIXTEENTH_MM },
  };
}
