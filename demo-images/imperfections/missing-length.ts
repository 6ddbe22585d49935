import { forEachPoint, raiseMask } from "../field/height-grid";
import { surfaceDistance } from "../geometry/profile";
import { noise2, smoothstep } from "../noise/noise";
import { lastBead, type PlanPoint, type SceneDraft } from "./draft";

export interface MissingLengthOptions {
  /** Where the soapstone says the weld starts and ends, mm along it. */
  readonly fromMm: number;
  readonly toMm: number;
  readonly seed: number;
}

/** Strokes on the plate, from the joint outwards, mm. */
const STROKE = { from: 2.5, to: 17, half: 0.75 } as const;

/** Soapstone strokes at both ends of what was asked for, and a weld that stops before the second. */
export function paintMissingLength(draft: SceneDraft, options: MissingLengthOptions): void {
  for (const [i, x] of [options.fromMm, options.toMm].entries()) drawStrokes(draft, x, options.seed + 10 * i);
  const { startMm, endMm } = lastBead(draft).shape;
  const count = 12;
  const outline = Array.from({ length: count + 1 }, (_, i): PlanPoint => [
    endMm + ((options.toMm - endMm) * i) / count,
    0,
  ]);
  draft.records.push({
    kind: "missing-length",
    outline,
    closed: false,
    sizes: {
      missingMm: options.toMm - endMm,
      askedMm: options.toMm - options.fromMm,
      laidMm: endMm - Math.max(startMm, options.fromMm),
    },
    place: null,
    stretch: null,
  });
}

/** One stroke across each plate: dry stone that took on the high spots only. */
function drawStrokes(draft: SceneDraft, at: number, seed: number): void {
  const { grid, profile } = draft;
  const box = { x0: at - 3, x1: at + 3, y0: -STROKE.to, y1: STROKE.to };
  forEachPoint(grid, box, (k, x, y) => {
    const s = surfaceDistance(profile, y);
    const out = Math.abs(s);
    const side = s < 0 ? 0 : 5;
    const lean = 0.06 * s + 0.25 * noise2(s * 0.12, side, seed);
    const across = Math.abs(x - at - lean) / (STROKE.half * (1 + 0.25 * noise2(s * 0.5, side, seed + 1)));
    const body = smoothstep(1.1, 0.75, across) * smoothstep(STROKE.from, STROKE.from + 0.8, out);
    const run = smoothstep(STROKE.to, STROKE.to - 1.5, out);
    const grain = smoothstep(
      -0.5,
      0.25,
      noise2(x * 4.5, s * 4.5, seed + 2) + 0.5 * noise2(x * 1.2, s * 0.6, seed + 3),
    );
    raiseMask(grid.mask.chalk, k, body * run * (0.35 + 0.65 * grain) * (1 - grid.mask.bead[k]! / 255));
  });
}
