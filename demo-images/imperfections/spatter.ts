import { forEachPoint, raiseMask, sampleHeight } from "../field/height-grid";
import { noise2 } from "../noise/noise";
import { createRandom, type Random } from "../noise/random";
import { centreAt, lastBead, leaningRing, leanShare, type SceneDraft } from "./draft";

export interface SpatterOptions {
  readonly count: number;
  /** Median diameter of all that is drawn, the finest included; left out, that of `usualSpatter`. */
  readonly medianMm?: number;
  /** How far from the toe most of it lies, mm. */
  readonly spreadMm: number;
  readonly seed: number;
}

/**
 * Spread is that of the logarithm. LoHi-WELD (Block et al., IEEE Access 2024) reports deposits about 1.4 mm wide on beads
 * of 60 mm; its camera resolves no fine spatter, so its figure lies in the coarser half of ours.
 */
export const usualSpatter = { medianMm: 0.95, spread: 0.55, leastMm: 0.3, mostMm: 3 } as const;

export function drawSpatterDiameter(random: Random, medianMm: number = usualSpatter.medianMm): number {
  const drawn = random.logNormal(medianMm, usualSpatter.spread);
  return Math.min(usualSpatter.mostMm, Math.max(usualSpatter.leastMm, drawn));
}

interface Ball {
  readonly x: number;
  readonly y: number;
  readonly place: "face" | "beside";
  readonly radius: number;
  /** How far its middle lies off the surface, in radii: below it, so that it is stuck and not lying there. */
  readonly offset: number;
  /** Out of round in the plane of the surface, and which way. */
  readonly stretch: number;
  readonly turn: number;
  readonly shade: number;
}

/** Where the next ball falls: more near the toes, some on the face. */
function drawBall(draft: SceneDraft, options: SpatterOptions, random: Random): Ball {
  const bead = lastBead(draft);
  const { startMm, endMm } = bead.shape;
  const x = random.between(startMm - 4, endMm + 5);
  const toes = bead.toesAt(x) ?? { leftMm: centreAt(bead, x) - 0.5, rightMm: centreAt(bead, x) + 0.5 };
  const far = -options.spreadMm * Math.log(1 - random.next() * 0.97);
  const y = random.chance(0.12)
    ? random.between(toes.leftMm, toes.rightMm)
    : random.chance(0.5)
      ? toes.leftMm - 0.4 - far
      : toes.rightMm + 0.4 + far;
  return {
    x,
    y,
    place: y > toes.leftMm && y < toes.rightMm ? "face" : "beside",
    radius: drawSpatterDiameter(random, options.medianMm) / 2,
    offset: 0.1 - 0.4 * random.next(),
    stretch: 1 + 0.22 * random.next() ** 3,
    turn: random.between(0, Math.PI),
    shade: random.between(0.05, 1),
  };
}

const isInside = ({ grid }: SceneDraft, x: number, y: number): boolean =>
  x > grid.x0 + 2 &&
  y > grid.y0 + 2 &&
  x < grid.x0 + grid.nx * grid.stepMm - 2 &&
  y < grid.y0 + grid.ny * grid.stepMm - 2;

/** A ball stuck to the surface, whichever way that leans: a sphere about a middle off it along its normal. */
function paintBall(draft: SceneDraft, ball: Ball, lean: number, seed: number): void {
  const { grid } = draft;
  const { x, y, radius } = ball;
  const tilt =
    (sampleHeight({ ...grid, h: draft.smooth }, x, y + radius) -
      sampleHeight({ ...grid, h: draft.smooth }, x, y - radius)) /
    (2 * radius);
  const ground = sampleHeight(grid, x, y);
  const middle = { y: y - ball.offset * radius * tilt * lean, z: ground + ball.offset * radius * lean };
  const [cos, sin] = [Math.cos(ball.turn), Math.sin(ball.turn)];
  const reach = 1.9 * radius;
  forEachPoint(grid, { x0: x - reach, x1: x + reach, y0: y - reach, y1: y + reach }, (k, px, py) => {
    const dx = px - x;
    const dy = py - middle.y;
    const along = dx * cos + dy * sin;
    const across = dy * cos - dx * sin;
    const lump = 1 + 0.06 * noise2((px * 1.3) / radius, (py * 1.3) / radius, seed);
    const r = (Math.hypot(along / ball.stretch, across * ball.stretch) / radius) * lump;
    if (r >= 1) return sootAround(draft, k, dx, (py - y) / lean, radius);
    const top = middle.z + radius * Math.sqrt(1 - r * r);
    if (top <= grid.h[k]!) return;
    grid.h[k] = top;
    raiseMask(grid.mask.spatter, k, ball.shade);
  });
}

function sootAround({ grid }: SceneDraft, k: number, dx: number, dy: number, radius: number): void {
  const r = Math.hypot(dx, dy) / radius;
  if (r < 1.7) raiseMask(grid.mask.soot, k, 0.4 * (1.7 - r));
}

/** Balls of metal stuck to plate and bead, each sunk a little and a bit out of round. */
export function paintSpatter(draft: SceneDraft, options: SpatterOptions): void {
  const random = createRandom(options.seed);
  for (let n = 0; n < options.count; n++) {
    const ball = drawBall(draft, options, random);
    if (!isInside(draft, ball.x, ball.y) || draft.isCovered(ball.x, ball.y, 1.2 * ball.radius)) continue;
    const lean = leanShare(draft, ball.x, ball.y, Math.max(ball.radius, 0.5));
    paintBall(draft, ball, lean, options.seed + n);
    // Where the sphere meets the surface, or its own width where its middle stands above that.
    const foot = ball.radius * (ball.offset > 0 ? 1 : Math.sqrt(1 - ball.offset ** 2));
    draft.records.push({
      kind: "spatter",
      outline: leaningRing(ball.x, ball.y, lean, () => foot, 14),
      closed: true,
      sizes: { diameterMm: 2 * foot },
      place: ball.place,
      stretch: null,
    });
  }
}
