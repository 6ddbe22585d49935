import { forEachPoint, sampleHeight } from "../field/height-grid";
import { fractalNoise1, smoothstep } from "../noise/noise";
import { lastBead, type PlanPoint, type SceneDraft } from "./draft";

export interface SaggingOptions {
  readonly fromMm: number;
  readonly toMm: number;
  /** How far the belly stands out over the face as it was laid, mm. */
  readonly bellyMm: number;
  readonly seed: number;
}

/** Where across the face (-1 the lower toe, 1 the upper) the metal gathered, and where it is missing. */
const BELLY_U = -0.52;
const HOLLOW_U = 0.4;

/** How strongly the face has sunk at x, 0 to about 1.3: in tongues, never evenly. */
function createSlump({ fromMm, toMm, seed }: SaggingOptions): (x: number) => number {
  return (x) =>
    smoothstep(fromMm, fromMm + 6, x) *
    smoothstep(toMm, toMm - 6, x) *
    Math.max(0.25, 0.85 + 0.95 * fractalNoise1(x * 0.2, seed, 2));
}

/** Metal that sank down the face of the last bead before it froze: a belly low down, a hollow above it. */
export function paintSagging(draft: SceneDraft, options: SaggingOptions): void {
  const { grid } = draft;
  const bead = lastBead(draft);
  const slumpAt = createSlump(options);
  const reach = bead.shape.rightMm - bead.shape.leftMm;
  const box = { x0: options.fromMm, x1: options.toMm, y0: -reach, y1: reach };
  forEachPoint(grid, box, (k, x, y) => {
    const toes = bead.toesAt(x);
    if (toes === null || y <= toes.leftMm || y >= toes.rightMm) return;
    const u = (2 * (y - toes.leftMm)) / (toes.rightMm - toes.leftMm) - 1;
    const slump = slumpAt(x);
    // A tongue hangs lower the more it sank, and its lower side is the steep one.
    const low = BELLY_U - 0.2 * (slump - 0.85);
    const spread = u < low ? 0.2 : 0.42;
    const belly = Math.exp(-(((u - low) / spread) ** 2)) * smoothstep(-1, -0.93, u);
    const hollow = Math.exp(-(((u - HOLLOW_U) / 0.33) ** 2)) * smoothstep(1, 0.85, u);
    grid.h[k]! += options.bellyMm * slump * (belly - 0.62 * hollow);
  });
  recordSag(draft, options);
}

function recordSag(draft: SceneDraft, { fromMm, toMm }: SaggingOptions): void {
  const bead = lastBead(draft);
  const left: PlanPoint[] = [];
  const right: PlanPoint[] = [];
  const depths: number[] = [];
  for (let x = fromMm + 0.5; x < toMm; x += 1) {
    const toes = bead.toesAt(x);
    if (toes === null) continue;
    const width = toes.rightMm - toes.leftMm;
    const at = (u: number): number => toes.leftMm + ((u + 1) / 2) * width;
    left.push([x, toes.leftMm]);
    right.push([x, at(0.75)]);
    const lift = (u: number): number => squareLift(draft, x, toes.leftMm, toes.rightMm, at(u));
    depths.push(lift(BELLY_U) - lift(HOLLOW_U));
  }
  draft.records.push({
    kind: "sagging",
    outline: [...left, ...right.reverse()],
    closed: true,
    // How much further out the belly stands than the hollow above it, square to the line that joins the toes.
    sizes: { lengthMm: toMm - fromMm, sagMm: Math.max(...depths) },
    place: "face",
    stretch: "run",
  });
}

/** Height of the field at y over the line that joins the toes, square to it, mm. */
function squareLift({ grid }: SceneDraft, x: number, left: number, right: number, y: number): number {
  const [zl, zr] = [sampleHeight(grid, x, left), sampleHeight(grid, x, right)];
  const line = zl + ((y - left) * (zr - zl)) / (right - left);
  return ((sampleHeight(grid, x, y) - line) * (right - left)) / Math.hypot(right - left, zr - zl);
}
