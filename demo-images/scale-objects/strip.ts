import { createRequire } from "node:module";
import { distanceToNumber, numberWidth } from "./stroke-digits";
import { bandShare, roundedCover, type ScaleObject } from "./scale-object";

export const STRIP_CODE = 4;

interface MarkerDictionary {
  readonly codeList: readonly string[];
}
const { AR } = createRequire(import.meta.url)("js-aruco2") as {
  AR: { Dictionary: new (name: string) => MarkerDictionary };
};
const BITS = 6;
const MODULES = BITS + 2;

/** Layout of the printed scale strip, mm; origin at its middle, markers left to right. */
export const stripLayout = {
  lengthMm: 120,
  widthMm: 22,
  dictionary: "ARUCO_MIP_36h12",
  markerMm: 16,
  markers: [
    { id: 0, a: -49, b: 0 },
    { id: 1, a: 49, b: 0 },
  ],
  ruleFromMm: -35,
  ruleToMm: 35,
} as const;

type IsDark = (column: number, row: number) => boolean;

/** Modules of a marker as printed, row 0 at the top; the outer ring is dark. */
function markerModules(id: number): IsDark {
  const bits = new AR.Dictionary(stripLayout.dictionary).codeList[id] as string;
  return (column, row) => {
    if (column < 0 || row < 0 || column >= MODULES || row >= MODULES) return false;
    if (column === 0 || row === 0 || column === MODULES - 1 || row === MODULES - 1) return true;
    return bits[(row - 1) * BITS + column - 1] === "0";
  };
}

/** Area share of dark in a window one step wide: the overlap with each module it touches. */
function moduleShare(isDark: IsDark, a: number, b: number, stepMm: number): number {
  const size = stripLayout.markerMm / MODULES;
  const left = (a + stripLayout.markerMm / 2) / size;
  const top = (stripLayout.markerMm / 2 - b) / size;
  const half = stepMm / size / 2;
  let share = 0;
  for (let row = Math.floor(top - half); row <= Math.floor(top + half); row++) {
    for (let column = Math.floor(left - half); column <= Math.floor(left + half); column++) {
      if (!isDark(column, row)) continue;
      const w = Math.min(column + 1, left + half) - Math.max(column, left - half);
      const h = Math.min(row + 1, top + half) - Math.max(row, top - half);
      share += Math.max(0, w) * Math.max(0, h);
    }
  }
  return share / (4 * half * half);
}

function ruleInk(a: number, b: number, step: number): number {
  const { ruleFromMm, ruleToMm } = stripLayout;
  const along = a - ruleFromMm;
  const last = ruleToMm - ruleFromMm;
  const n = Math.round(along);
  let ink = 0;
  const low = b + 8;
  if (n >= 0 && n <= last && low > -1) {
    const tick = n % 10 === 0 ? 6.5 : n % 5 === 0 ? 4.8 : 3.4;
    ink =
      bandShare(along - n, 0.09, step) *
      Math.min(1, Math.max(0, (tick - low) / step + 0.5)) *
      Math.min(1, Math.max(0, low / step + 0.5));
  }
  const ten = Math.round(along / 10);
  if (ten >= 0 && ten * 10 <= last) {
    const text = String(ten * 10);
    const d = distanceToNumber(text, (along - ten * 10) / 1.2 + numberWidth(text) / 2, (b + 0.6) / 1.2) * 1.2;
    ink = Math.max(ink, Math.min(1, Math.max(0, (0.16 - d) / step + 0.5)));
  }
  const inch = Math.round((along * 8) / 25.4);
  const high = 8 - b;
  if (inch >= 0 && inch * 25.4 <= last * 8 && high > -1 && high < 5) {
    const tick = inch % 8 === 0 ? 4.4 : inch % 4 === 0 ? 3.2 : 2.2;
    ink = Math.max(
      ink,
      bandShare(along - (inch * 25.4) / 8, 0.09, step) *
        Math.min(1, Math.max(0, (tick - high) / step + 0.5)) *
        Math.min(1, Math.max(0, high / step + 0.5)),
    );
  }
  return ink;
}

export function createStrip(): ScaleObject {
  const { lengthMm, widthMm, markerMm, markers } = stripLayout;
  const modules = markers.map((marker) => markerModules(marker.id));
  const half = markerMm / 2;
  return {
    kind: "strip",
    lengthMm,
    widthMm,
    thicknessMm: 0.12,
    code: STRIP_CODE,
    cover: (a, b, step) => roundedCover(a, b, lengthMm / 2, widthMm / 2, 0.2, step),
    ink(a, b, step) {
      for (let m = 0; m < markers.length; m++) {
        const marker = markers[m]!;
        if (Math.abs(a - marker.a) < half + 1)
          return moduleShare(modules[m]!, a - marker.a, b - marker.b, step);
      }
      return ruleInk(a, b, step);
    },
    relief: () => 0,
    keyPoints: markers.flatMap((marker) =>
      (
        [
          [-1, 1],
          [1, 1],
          [1, -1],
          [-1, -1],
        ] as const
      ).map(([sa, sb], i) => ({
        name: `marker ${marker.id} corner ${i}`,
        at: [marker.a + sa * half, marker.b + sb * half] as const,
      })),
    ),
    sizes: { markerMm, lengthMm, widthMm },
  };
}
