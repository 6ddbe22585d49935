import { MM_PER_INCH } from "@/lib/base";
import aruco from "js-aruco2";
import type { Point } from "@/lib/geometry";

/** On the printed strip: mm from its top left corner, x right, y down. */
export type StripPoint = Point<"strip">;

export interface StripRect {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface StripText {
  readonly text: string;
  /** Middle of the foot of the text. */
  readonly x: number;
  readonly y: number;
  readonly heightMm: number;
}

/**
 * The printed scale strip, in mm from its top left corner, x right, y down: everything a page needs to draw it, as
 * filled rectangles and short texts. Our own design; the markers are those of the open ARUCO_MIP_36h12 dictionary.
 */
export interface StripLayout {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly markers: readonly { readonly id: number; readonly middle: StripPoint; readonly sideMm: number }[];
  /** Black: marker modules and rule ticks. */
  readonly ink: readonly StripRect[];
  readonly texts: readonly StripText[];
  /** Bars beside the strip to hold a rule against: the printed length over this one is the print factor. */
  readonly checkBars: readonly {
    readonly rect: StripRect;
    readonly nominalMm: number;
    readonly label: string;
  }[];
}

export const STRIP_DICTIONARY = "ARUCO_MIP_36h12";
const BITS = 6;
const MODULES = BITS + 2;
const SIDE_MM = 16;
const LENGTH_MM = 120;
const WIDTH_MM = 22;
const MIDDLE_Y = WIDTH_MM / 2;
const RULE_FROM_MM = 25;
const RULE_MM = 70;
const TICK_MM = 0.18;

const markers = [
  { id: 0, middle: { x: 11, y: MIDDLE_Y }, sideMm: SIDE_MM },
  { id: 1, middle: { x: 109, y: MIDDLE_Y }, sideMm: SIDE_MM },
] as const;

/** Geometry of the strip as pure data; the same on every call. */
export function stripLayout(): StripLayout {
  return {
    lengthMm: LENGTH_MM,
    widthMm: WIDTH_MM,
    markers,
    ink: [...markers.flatMap(markerInk), ...millimetreTicks(), ...inchTicks()],
    texts: Array.from({ length: RULE_MM / 10 + 1 }, (_, i) => ({
      text: String(10 * i),
      x: RULE_FROM_MM + 10 * i,
      y: MIDDLE_Y,
      heightMm: 1.8,
    })),
    checkBars: [
      { rect: { x: 0, y: WIDTH_MM + 6, width: 100, height: 1.5 }, nominalMm: 100, label: "100 mm" },
      { rect: { x: 0, y: WIDTH_MM + 12, width: 101.6, height: 1.5 }, nominalMm: 101.6, label: "4 in" },
    ],
  };
}

/** Corners of a marker from its top left, clockwise, mm on the strip. */
export function markerCorners(id: number): readonly StripPoint[] | null {
  const marker = markers.find((one) => one.id === id);
  if (marker === undefined) return null;
  const half = marker.sideMm / 2;
  const { x, y } = marker.middle;
  return [
    { x: x - half, y: y - half },
    { x: x + half, y: y - half },
    { x: x + half, y: y + half },
    { x: x - half, y: y + half },
  ];
}

export const stripMarkerIds: readonly number[] = markers.map(({ id }) => id);

/** Runs of dark modules, row by row; the outer ring is dark. */
function markerInk({ id, middle }: (typeof markers)[number]): readonly StripRect[] {
  const bits = new aruco.AR.Dictionary(STRIP_DICTIONARY).codeList[id]!;
  const size = SIDE_MM / MODULES;
  const left = middle.x - SIDE_MM / 2;
  const top = middle.y - SIDE_MM / 2;
  const dark = (column: number, row: number): boolean =>
    column === 0 ||
    row === 0 ||
    column === MODULES - 1 ||
    row === MODULES - 1 ||
    bits[(row - 1) * BITS + column - 1] === "0";
  const runs: StripRect[] = [];
  for (let row = 0; row < MODULES; row++)
    for (let column = 0; column < MODULES; column++) {
      if (!dark(column, row)) continue;
      const from = column;
      while (column + 1 < MODULES && dark(column + 1, row)) column++;
      runs.push({
        x: left + from * size,
        y: top + row * size,
        width: (column + 1 - from) * size,
        height: size,
      });
    }
  return runs;
}

function millimetreTicks(): readonly StripRect[] {
  return Array.from({ length: RULE_MM + 1 }, (_, mm) => {
    const height = mm % 10 === 0 ? 6.5 : mm % 5 === 0 ? 4.8 : 3.4;
    return { x: RULE_FROM_MM + mm - TICK_MM / 2, y: WIDTH_MM - 3 - height, width: TICK_MM, height };
  });
}

function inchTicks(): readonly StripRect[] {
  const eighths = Math.floor((RULE_MM * 8) / MM_PER_INCH);
  return Array.from({ length: eighths + 1 }, (_, i) => {
    const height = i % 8 === 0 ? 4.4 : i % 4 === 0 ? 3.2 : 2.2;
    return { x: RULE_FROM_MM + (i * MM_PER_INCH) / 8 - TICK_MM / 2, y: 3, width: TICK_MM, height };
  });
}
