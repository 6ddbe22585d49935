import { forEachPoint, sampleHeight } from "../field/height-grid";
import { smoothstep } from "../noise/noise";
import { createRandom } from "../noise/random";
import { centreAt, lastBead, type SceneDraft } from "./draft";
import { recordBand } from "./shape-faults";

export interface IrregularSurfaceOptions {
  readonly fromMm: number;
  readonly toMm: number;
  /** Of the highest lumps over the face, mm. */
  readonly heightMm: number;
  readonly seed: number;
}

/** A drop of metal that froze on its own, or (negative) a place that got too little. */
interface Lump {
  readonly atMm: number;
  readonly heightMm: number;
  readonly lengthMm: number;
  /** Where across the face its middle lies, -1 to 1. */
  readonly u: number;
}

function lumpsOf({ fromMm, toMm, heightMm, seed }: IrregularSurfaceOptions): Lump[] {
  const random = createRandom(seed);
  const lumps: Lump[] = [];
  for (let x = fromMm + 2; x < toMm - 2; x += random.between(2.6, 5.4)) {
    const isDip = lumps.length % 3 === 2;
    lumps.push({
      atMm: x,
      heightMm: heightMm * (isDip ? -random.between(0.35, 0.7) : random.between(0.45, 1)),
      lengthMm: random.between(1.8, 3.6),
      u: random.normal(0, 0.3),
    });
  }
  return lumps;
}

/** A lump has a rounded front like a ripple's and runs out behind; a dip is soft all round. */
function lumpHeight(lump: Lump, half: number, x: number, u: number): number {
  const across = Math.exp(-(((u - lump.u) / 0.62) ** 2)) * smoothstep(1, 0.82, Math.abs(u));
  const s = x - lump.atMm + 0.85 * half * Math.sqrt(Math.max(0, 1 - u * u));
  if (lump.heightMm < 0) return lump.heightMm * across * Math.exp(-(((s - 1) / lump.lengthMm) ** 2));
  return lump.heightMm * across * smoothstep(0, 0.6, s) * Math.exp(-((Math.max(0, s) / lump.lengthMm) ** 2));
}

/** Lumps and dips along the face of the last bead, between toes that stay as they were. */
export function paintIrregularSurface(draft: SceneDraft, options: IrregularSurfaceOptions): void {
  const { grid } = draft;
  const bead = lastBead(draft);
  const lumps = lumpsOf(options);
  const reach = (bead.shape.rightMm - bead.shape.leftMm) / 2 + 2;
  const middle = (bead.shape.rightMm + bead.shape.leftMm) / 2;
  const box = { x0: options.fromMm, x1: options.toMm, y0: middle - reach, y1: middle + reach };
  forEachPoint(grid, box, (k, x, y) => {
    const toes = bead.toesAt(x);
    if (toes === null || y <= toes.leftMm || y >= toes.rightMm) return;
    const half = (toes.rightMm - toes.leftMm) / 2;
    const u = (y - toes.leftMm) / half - 1;
    for (const lump of lumps) if (Math.abs(x - lump.atMm) < 12) grid.h[k]! += lumpHeight(lump, half, x, u);
  });
  const sizes = { lengthMm: options.toMm - options.fromMm, heightMm: crestToTrough(draft, options) };
  recordBand(draft, "irregular-surface", 0, sizes, { ...options, stretch: "run" });
}

/** Between the highest crest and the lowest trough along the middle of the face, mm. */
function crestToTrough(draft: SceneDraft, { fromMm, toMm }: IrregularSurfaceOptions): number {
  const bead = lastBead(draft);
  const line: number[] = [];
  for (let x = fromMm + 1; x < toMm - 1; x += 0.25) line.push(sampleHeight(draft.grid, x, centreAt(bead, x)));
  return Math.max(...line) - Math.min(...line);
}
