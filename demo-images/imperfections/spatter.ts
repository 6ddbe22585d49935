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
  /** Its height off the surface as a share of its radius: 1 a ball, less a drop that spread before it froze. */
  readonly flat: number;
  /** How far its middle lies off the surface, in half-heights: below it, so that it is stuck and not lying there. */
  readonly offset: number;
  /** Its round, in shares of the radius, by angle in the plane of the surface. */
  readonly roundAt: (angle: number) => number;
  readonly shade: number;
}

/** No drop freezes quite round: an oval, a corner, a dent; the mean of its square is 1, so that its area is the circle's. */
function drawRound(random: Random): (angle: number) => number {
  const oval = 0.2 * random.next() ** 2;
  const corner = 0.07 * random.next();
  const dent = 0.025 * random.next();
  const [a, b, c] = [random.between(0, 6.28), random.between(0, 6.28), random.between(0, 6.28)];
  const level = 1 / Math.sqrt(1 + (oval * oval + corner * corner + dent * dent) / 2);
  return (angle) =>
    level *
    (1 + oval * Math.cos(2 * angle + a) + corner * Math.cos(3 * angle + b) + dent * Math.cos(5 * angle + c));
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
    flat: 1 - 0.5 * random.next() ** 1.5,
    offset: 0.1 - 0.5 * random.next(),
    roundAt: drawRound(random),
    shade: 0.08 + 0.9 * random.next() ** 2,
  };
}

const isInside = ({ grid }: SceneDraft, x: number, y: number): boolean =>
  x > grid.x0 + 2 &&
  y > grid.y0 + 2 &&
  x < grid.x0 + grid.nx * grid.stepMm - 2 &&
  y < grid.y0 + grid.ny * grid.stepMm - 2;

/** A drop that falls into an open pore is part of it and cannot be told from its wall. */
function isOverHole({ grid }: SceneDraft, { x, y, radius }: Ball): boolean {
  let hole = false;
  forEachPoint(grid, { x0: x - radius, x1: x + radius, y0: y - radius, y1: y + radius }, (k) => {
    hole ||= grid.mask.hole[k]! > 0;
  });
  return hole;
}

/** A drop stuck to the surface, whichever way that leans: a spheroid about a middle off it along its normal. */
function paintBall(draft: SceneDraft, ball: Ball, lean: number, seed: number): void {
  const { grid } = draft;
  const { x, y, radius, flat } = ball;
  const smooth = { ...grid, h: draft.smooth };
  const slope = (sampleHeight(smooth, x, y + radius) - sampleHeight(smooth, x, y - radius)) / (2 * radius);
  // Unit normal of the surface across the weld: (-tilt, lean).
  const tilt = slope * lean;
  const off = ball.offset * flat * radius;
  const middle = { y: y - off * tilt, z: sampleHeight(grid, x, y) + off * lean };
  const squeeze = 1 / (flat * flat) - 1;
  const a = 1 + squeeze * lean * lean;
  const reach = 1.9 * radius;
  forEachPoint(grid, { x0: x - reach, x1: x + reach, y0: y - reach, y1: y + reach }, (k, px, py) => {
    const round = ball.roundAt(Math.atan2((py - middle.y) / lean, px - x));
    const dx = (px - x) / round;
    const dy = (py - middle.y) / round;
    // Height over the middle of |p|² + squeeze (p · normal)² = radius², upper root.
    const b = squeeze * lean * tilt * dy;
    const c = dx * dx + dy * dy * (1 + squeeze * tilt * tilt) - radius * radius;
    const inside = b * b - a * c;
    if (inside <= 0) return sootAround(draft, k, px - x, (py - y) / lean, radius);
    const lump = 0.07 * radius * noise2((px * 1.5) / radius, (py * 1.5) / radius, seed);
    const top = middle.z + (b + Math.sqrt(inside)) / a + lump;
    if (top <= grid.h[k]!) return;
    grid.h[k] = top;
    raiseMask(grid.mask.spatter, k, ball.shade);
  });
}

function sootAround({ grid }: SceneDraft, k: number, dx: number, dy: number, radius: number): void {
  const r = Math.hypot(dx, dy) / radius;
  if (r < 1.7) raiseMask(grid.mask.soot, k, 0.12 * (1.7 - r));
}

/** Drops of metal stuck to plate and bead, each sunk a little and out of round. */
export function paintSpatter(draft: SceneDraft, options: SpatterOptions): void {
  const random = createRandom(options.seed);
  for (let n = 0; n < options.count; n++) {
    const ball = drawBall(draft, options, random);
    if (!isInside(draft, ball.x, ball.y) || draft.isCovered(ball.x, ball.y, 1.2 * ball.radius)) continue;
    if (isOverHole(draft, ball)) continue;
    const lean = leanShare(draft, ball.x, ball.y, Math.max(ball.radius, 0.5));
    paintBall(draft, ball, lean, options.seed + n);
    // Where the sphere meets the surface, or its own width where its middle stands above that.
    const foot = ball.radius * (ball.offset > 0 ? 1 : Math.sqrt(1 - ball.offset ** 2));
    draft.records.push({
      kind: "spatter",
      outline: leaningRing(ball.x, ball.y, lean, (angle) => foot * ball.roundAt(angle), 16),
      closed: true,
      sizes: { diameterMm: 2 * foot },
      place: ball.place,
      stretch: null,
    });
  }
}
