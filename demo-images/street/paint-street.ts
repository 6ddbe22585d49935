import { forEachPoint, raiseMask, type HeightGrid } from "../field/height-grid";
import { lastBead, type SceneDraft } from "../imperfections/draft";
import { fractalNoise1, fractalNoise2, noise1, noise2, patchMask, smoothstep } from "../noise/noise";
import { createRandom, namedSeed, type Random } from "../noise/random";
import type { HeatBand, StreetLook, ToeBand } from "./street-look";

/** Writes what lies on the plate into the grid; the last bead's toes are what the bands run along. */
export function paintStreet(draft: SceneDraft, look: StreetLook): void {
  paintPits(draft.grid, look);
  paintMottle(draft.grid, look);
  look.heatBands.forEach((band, i) => paintHeatBand(draft, band, namedSeed(look.seed, `heat ${i}`)));
  look.toeBands.forEach((band, i) => paintToeBand(draft, band, namedSeed(look.seed, `toe ${i}`)));
  const random = createRandom(namedSeed(look.seed, "things"));
  for (let n = 0; n < look.patches; n++) paintPatch(draft.grid, random);
  for (let n = 0; n < look.stamps; n++) paintStamp(draft.grid, random);
  for (let n = 0; n < look.threads; n++) paintThread(draft.grid, random);
  for (let n = 0; n < look.specks; n++) paintSpeck(draft.grid, random);
}

/** Pitted rust, cast skin and grit on the plate, none of it on the bead. */
function paintPits(grid: HeightGrid, { pitDepthMm, pitSizeMm, grit, seed }: StreetLook): void {
  if (pitDepthMm <= 0 && grit <= 0) return;
  const pits = namedSeed(seed, "pits");
  for (let j = 0; j < grid.ny; j++)
    for (let i = 0; i < grid.nx; i++) {
      const k = j * grid.nx + i;
      if (grid.mask.bead[k]! > 20) continue;
      const [x, y] = [i * grid.stepMm, j * grid.stepMm];
      const rough = fractalNoise2(x / pitSizeMm, y / pitSizeMm, pits, 3);
      grid.h[k]! += pitDepthMm * (rough - 0.8 * smoothstep(0.1, 0.5, -rough));
      const grain = 0.6 * noise2(x * 1.7, y * 1.7, pits + 7) + 0.7 * noise2(x * 4.6, y * 4.6, pits + 8);
      const peppered = smoothstep(1.1 - 1.5 * grit, 1.5 - 1.5 * grit, grain + 0.5 * rough);
      if (peppered > 0) raiseMask(rough > 0 ? grid.mask.rust : grid.mask.fume, k, 0.7 * grit * peppered);
    }
}

/** Blotches of what lies about in a yard, with ragged edges, two layers over one another; none of it on the bead. */
function paintMottle(grid: HeightGrid, { mottle, mottleMm, seed }: StreetLook): void {
  if (mottle <= 0) return;
  const layers = (["rust", "fume", "bare", "soot", "chalk"] as const).filter((_, i) => (seed >> i) % 2 === 0);
  layers.slice(0, 3).forEach((name, n) => {
    const layer = namedSeed(seed, `mottle ${n}`);
    const size = mottleMm * (0.6 + 0.5 * n);
    for (let j = 0; j < grid.ny; j++)
      for (let i = 0; i < grid.nx; i++) {
        const k = j * grid.nx + i;
        if (grid.mask.bead[k]! > 20) continue;
        const [x, y] = [(i * grid.stepMm) / size, (j * grid.stepMm) / size];
        const there = patchMask(x, y, layer, 0.42, 0.12) * (0.7 + 0.3 * noise2(4 * x, 4 * y, layer + 1));
        if (there > 0) raiseMask(grid.mask[name], k, mottle * there);
      }
  });
}

/** Every grid point beside one toe of the last bead: how far out it lies (negative on the bead) and its x. */
function besideToe(
  { grid, ...draft }: SceneDraft,
  side: "left" | "right",
  insideMm: number,
  outsideMm: number,
  visit: (k: number, outMm: number, xMm: number) => void,
): void {
  const bead = lastBead({ grid, ...draft });
  const outward = side === "left" ? -1 : 1;
  for (let i = 0; i < grid.nx; i++) {
    const x = grid.x0 + i * grid.stepMm;
    const toes = bead.toesAt(x);
    if (toes === null) continue;
    const toe = side === "left" ? toes.leftMm : toes.rightMm;
    const ends = [toe - outward * insideMm, toe + outward * outsideMm];
    const box = { x0: x, x1: x + 0.4 * grid.stepMm, y0: Math.min(...ends), y1: Math.max(...ends) };
    forEachPoint(grid, { ...box, x0: x - 0.4 * grid.stepMm }, (k, _x, y) => visit(k, (y - toe) * outward, x));
  }
}

function paintToeBand(draft: SceneDraft, band: ToeBand, seed: number): void {
  const { grid } = draft;
  const swing = (x: number, n: number): number => 1 + 0.55 * fractalNoise1(x * 0.35, seed + n, 3);
  besideToe(draft, band.side, 1.6 * band.insideMm, 1.6 * band.outsideMm, (k, out, x) => {
    const there = smoothstep(0.1, -0.1, noise1(x * 0.22, seed + 3) - (2 * band.cover - 1));
    const reach = out < 0 ? band.insideMm * swing(x, 1) : band.outsideMm * swing(x, 2);
    const body = there * smoothstep(1, 0.75, Math.abs(out) / Math.max(0.02, reach));
    if (body <= 0) return;
    const lump = 0.6 + 0.5 * fractalNoise2(x * 1.3, out * 1.6, seed + 4, 2);
    grid.h[k]! += band.heightMm * body * lump;
    raiseMask(grid.mask[band.mask], k, band.strength * body);
  });
}

/** The mask's two high bits are the colour, the others how strong it is. */
function paintHeatBand(draft: SceneDraft, band: HeatBand, seed: number): void {
  const { grid } = draft;
  const edge = (x: number): number => 1 + 0.18 * fractalNoise1(x * 0.12, seed, 3);
  besideToe(draft, band.side, 0, 1.4 * band.toMm, (k, out, x) => {
    const swing = edge(x);
    if (out < band.fromMm * swing || out > band.toMm * swing) return;
    const worn = 0.75 + 0.25 * noise2(x * 1.1, out * 1.1, seed + 1);
    grid.mask.tint[k] = (band.colour << 6) | Math.round(63 * Math.min(1, band.strength * worn));
  });
}

const placeIn = (grid: HeightGrid, random: Random): readonly [number, number] => [
  grid.x0 + random.next() * (grid.nx - 1) * grid.stepMm,
  grid.y0 + random.next() * (grid.ny - 1) * grid.stepMm,
];

/** Dirt: flat crumbs of soot, rust, chalk or bright filings. */
function paintSpeck(grid: HeightGrid, random: Random): void {
  const [x0, y0] = placeIn(grid, random);
  const radius = random.logNormal(0.35, 0.5);
  const mask = (["soot", "rust", "chalk", "bare", "fume"] as const)[Math.floor(5 * random.next())]!;
  const level = random.between(0.4, 1);
  const seed = Math.floor(1e6 * random.next());
  forEachPoint(grid, around(x0, y0, 1.5 * radius), (k, x, y) => {
    const r = Math.hypot(x - x0, y - y0) * (1 + 0.4 * noise2(x / radius, y / radius, seed));
    raiseMask(grid.mask[mask], k, level * smoothstep(radius, 0.8 * radius, r));
  });
}

/** A thread, a hair, a scratch or a felt-tip line across the plate. */
function paintThread(grid: HeightGrid, random: Random): void {
  const [x0, y0] = placeIn(grid, random);
  const turn = 2 * Math.PI * random.next();
  const [length, bend, half] = [random.between(8, 60), random.normal(0, 0.03), random.between(0.06, 0.3)];
  const mask = (["soot", "bare", "chalk", "crack"] as const)[Math.floor(4 * random.next())]!;
  const level = random.between(0.4, 0.9);
  for (let s = 0; s < length; s += 0.5 * grid.stepMm) {
    const angle = turn + 0.5 * bend * s;
    const [x, y] = [x0 + s * Math.cos(angle), y0 + s * Math.sin(angle)];
    forEachPoint(grid, around(x, y, half), (k) => raiseMask(grid.mask[mask], k, level));
  }
}

/** A row of punched strokes, as numbers are stamped: small dents with a bright rim. */
function paintStamp(grid: HeightGrid, random: Random): void {
  const [x0, y0] = placeIn(grid, random);
  const size = random.between(2, 6);
  for (let n = 0; n < 3 + 5 * random.next(); n++)
    for (let stroke = 0; stroke < 3; stroke++) {
      const turn = Math.floor(4 * random.next()) * (Math.PI / 4);
      const [cx, cy] = [
        x0 + 0.8 * n * size + random.normal(0, 0.2 * size),
        y0 + random.normal(0, 0.25 * size),
      ];
      for (let s = -size / 3; s < size / 3; s += 0.7 * grid.stepMm)
        forEachPoint(grid, around(cx + s * Math.cos(turn), cy + s * Math.sin(turn), 0.25), (k) => {
          grid.h[k]! -= 0.05;
          raiseMask(grid.mask.bare, k, 0.3);
        });
    }
}

/** White paper, paint or chalk with straight or torn edges; it may lie over the bead's ends but never hides a toe. */
function paintPatch(grid: HeightGrid, random: Random): void {
  const [x0, y0] = placeIn(grid, random);
  const [a, b] = [random.between(4, 22), random.between(3, 14)];
  const turn = Math.PI * random.next();
  const mask = random.chance(0.6) ? "chalk" : "soot";
  const seed = Math.floor(1e6 * random.next());
  const torn = random.chance(0.5) ? 0.25 : 0;
  forEachPoint(grid, around(x0, y0, a + b), (k, x, y) => {
    if (grid.mask.bead[k]! > 0) return;
    const u = ((x - x0) * Math.cos(turn) + (y - y0) * Math.sin(turn)) / a;
    const v = ((y - y0) * Math.cos(turn) - (x - x0) * Math.sin(turn)) / b;
    const edge = 1 + torn * fractalNoise2(x * 0.5, y * 0.5, seed, 3);
    if (Math.max(Math.abs(u), Math.abs(v)) > edge) return;
    raiseMask(grid.mask[mask], k, torn > 0 ? patchMask(x * 0.2, y * 0.2, seed, 0.7) : 0.9);
  });
}

const around = (x: number, y: number, reach: number) => ({
  x0: x - reach,
  x1: x + reach,
  y0: y - reach,
  y1: y + reach,
});
