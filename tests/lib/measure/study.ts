import { calibrate, defaultMeasureOptions } from "@/lib/measure";
import { measureLength } from "@/lib/measure/figures";
import type { Scale } from "@/lib/marks";
import type { Point } from "@/lib/geometry";
import { chance, normal, photograph, type Camera } from "./camera";

export const kinds = ["two-points", "rectangle", "edges", "disc", "strip"] as const;
export type Kind = (typeof kinds)[number];

export interface Study {
  readonly inside: number;
  readonly errors: readonly number[];
  readonly relative: readonly number[];
}

/** Photographs with known truth, picked with `pickFactor` times the error the product states. */
export function study(kind: Kind, photos: number, pickFactor: number, seed: number): Study {
  const random = chance(seed);
  const options = {
    ...defaultMeasureOptions,
    photo: { widthPx: 4000, heightPx: 3000 },
    photoPxPerViewPx: 1,
  };
  const sigma = options.pickSigmaPx * options.photoPxPerViewPx * pickFactor;
  const span = (low: number, high: number): number => low + (high - low) * random();
  let inside = 0;
  const errors: number[] = [];
  const relative: number[] = [];
  for (let i = 0; i < photos; i++) {
    // Two points are for photos held square; the others are tilted freely.
    const free = kind === "two-points" ? normal(random) * options.tiltSigmaDeg : span(-35, 35);
    const other = kind === "two-points" ? normal(random) * options.tiltSigmaDeg : span(-20, 20);
    const camera: Camera = {
      widthPx: 4000,
      heightPx: 3000,
      focalPx: 2889,
      distanceMm: span(160, 300),
      tiltXDeg: free,
      tiltYDeg: other,
      rollDeg: span(-180, 180),
      cornerShare: normal(random) * options.lensCornerRelativeU,
    };
    const height = span(-1, 1) * options.heightHalfWidthMm;
    const stated = 1 + normal(random) * options.statedLengthRelativeU;
    const pick = (p: Point): Point => ({ x: p.x + sigma * normal(random), y: p.y + sigma * normal(random) });
    const shoot = (x: number, y: number, z = 0): Point => pick(photograph(camera, x, y, z));
    const scale = scaleOf(kind, shoot, (x, y) => photograph(camera, x, y), random, stated);
    const calibration = calibrate(scale, options);
    if (!calibration.ok) throw new Error(calibration.issues[0]!.code);
    const angle = span(0, 2 * Math.PI);
    const at = { x: span(-25, 25), y: span(0, 15) };
    const reach = span(3, 20);
    const ends = [-1, 1].map((sign) =>
      shoot(at.x + (sign * reach * Math.cos(angle)) / 2, at.y + (sign * reach * Math.sin(angle)) / 2, height),
    );
    const measured = measureLength(calibration.value, ends);
    const error = measured.value - reach;
    if (Math.abs(error) <= measured.expandedUncertainty) inside++;
    errors.push(error);
    relative.push(Math.min(Math.abs(error) / 0.15, Math.abs(error) / (0.01 * reach)));
  }
  return { inside: inside / photos, errors, relative };
}

/** The scale object lies below the weld; its true size is `stated` times what is said of it. */
function scaleOf(
  kind: Kind,
  shoot: (x: number, y: number) => Point,
  exact: (x: number, y: number) => Point,
  random: () => number,
  stated: number,
): Scale {
  const w = 85.6;
  const h = 53.98;
  const place = (x: number, y: number): [number, number] => [x * stated - 40, y * stated - 62];
  switch (kind) {
    case "two-points":
      return { kind, a: shoot(...place(0, 40)), b: shoot(...place(100, 40)), lengthMm: 100 };
    case "rectangle":
      return {
        kind,
        corners: [shoot(...place(0, 0)), shoot(...place(w, 0)), shoot(...place(w, h)), shoot(...place(0, h))],
        widthMm: w,
        heightMm: h,
      };
    case "edges": {
      const edge = (x1: number, y1: number, x2: number, y2: number): [Point, Point] => [
        shoot(...place(x1 + 0.1 * (x2 - x1), y1 + 0.1 * (y2 - y1))),
        shoot(...place(x1 + 0.9 * (x2 - x1), y1 + 0.9 * (y2 - y1))),
      ];
      return {
        kind,
        edges: [edge(0, 0, w, 0), edge(w, 0, w, h), edge(w, h, 0, h), edge(0, h, 0, 0)],
        widthMm: w,
        heightMm: h,
      };
    }
    case "disc":
      return {
        kind,
        rim: Array.from({ length: 12 }, (_, i) => {
          const t = (2 * Math.PI * i) / 12;
          return shoot(...place(40 + 12.875 * Math.cos(t), 45 + 12.875 * Math.sin(t)));
        }),
        diameterMm: 25.75,
      };
    case "strip":
      return {
        kind,
        corners: [0, 1, 2, 3].flatMap((marker) =>
          [
            [0, 0],
            [12, 0],
            [12, 12],
            [0, 12],
          ].map(([dx, dy]) => {
            const x = marker * 40 + dx! - 20;
            const y = 40 + dy!;
            const at = exact(...place(x, y));
            return { x: at.x + 0.3 * normal(random), y: at.y + 0.3 * normal(random), xMm: x, yMm: y };
          }),
        ),
        cornerSigmaPx: 0.3,
        printFactor: 1,
      };
  }
}

export function median(list: readonly number[]): number {
  const sorted = [...list].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)]!;
}
