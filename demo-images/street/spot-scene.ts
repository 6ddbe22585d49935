import type { Fault } from "../imperfections/paint-fault";
import { createRandom, mixSeed, type Random } from "../noise/random";
import type { SceneSpec } from "../scene";
import { streetScene } from "./street-scene";
import type { StreetLook } from "./street-look";

const whole = (random: Random, most: number): number => 1 + Math.floor(most * random.next() ** 2);

/** Open holes in the stretch that is looked at: pores of every layout, worm holes, a pipe in the crater. */
function holes(random: Random, fromMm: number, toMm: number): Fault[] {
  const seed = (): number => Math.floor(1e9 * random.next());
  const faults: Fault[] = [];
  if (toMm - fromMm < 6) return faults;
  if (random.chance(0.6))
    faults.push({
      kind: "porosity",
      count: whole(random, 24),
      medianMm: random.logNormal(1, 0.35),
      layout: (["single", "scattered", "clustered", "linear"] as const)[Math.floor(4 * random.next())]!,
      fromMm,
      toMm,
      seed: seed(),
    });
  if (random.chance(0.25))
    faults.push({ kind: "wormholes", count: whole(random, 10), fromMm, toMm, seed: seed() });
  if (random.chance(0.12))
    faults.push({ kind: "crater-pipe", diameterMm: random.between(0.5, 1.8), seed: seed() });
  return faults;
}

/** What is dark, round or raised on a bead and is neither hole nor ball: islands of slag and silicate, gas marks, dents. */
function lookAlikes(spec: SceneSpec, random: Random, fromMm: number, toMm: number): Fault[] {
  const bead = spec.beads[spec.beads.length - 1]!;
  const seed = (): number => Math.floor(1e9 * random.next());
  const faults: Fault[] = [];
  for (const kind of ["silicate", "stuck-slag"] as const) {
    if (!random.chance(0.35)) continue;
    for (let n = whole(random, 8); n > 0; n--)
      faults.push({
        kind,
        x: random.between(fromMm, toMm),
        y: random.between(bead.leftMm, bead.rightMm),
        radiusMm: random.logNormal(0.7, 0.5),
        heightMm: random.between(0.05, 0.4),
        seed: seed(),
      });
  }
  if (random.chance(0.15))
    faults.push({ kind: "gas-marks", count: whole(random, 6), fromMm, toMm, seed: seed() });
  if (random.chance(0.15))
    faults.push({
      kind: "chipping-marks",
      side: random.chance(0.5) ? "left" : "right",
      count: whole(random, 12),
      fromMm,
      toMm,
      lengthMm: random.between(1, 3),
      widthMm: random.between(0.3, 0.8),
      depthMm: random.between(0.08, 0.3),
      seed: seed(),
    });
  return faults;
}

const dirtier = (look: StreetLook, random: Random): StreetLook => ({
  ...look,
  specks: random.chance(0.75) ? whole(random, 260) : 0,
  threads: random.chance(0.5) ? whole(random, 12) : 0,
  stamps: random.chance(0.4) ? whole(random, 4) : 0,
});

function balls(random: Random, seed: number): Fault[] {
  if (!random.chance(0.55)) return [];
  return [
    {
      kind: "spatter",
      count: whole(random, 160),
      medianMm: random.between(0.6, 1.6),
      spreadMm: random.between(3, 14),
      seed,
    },
  ];
}

/**
 * A scene of the street seen from near, with holes and balls of spatter and much that looks like them. `beadPx`: how wide
 * the bead is to be in a picture `widthPx` wide.
 */
export function spotScene(spec: SceneSpec, seed: number, widthPx: number, beadPx: number): SceneSpec {
  const street = streetScene(spec, mixSeed(seed, 24));
  const random = createRandom(mixSeed(seed, 41));
  const { area, beads, pose } = street;
  const bead = beads[beads.length - 1]!;
  const fieldWidthMm = Math.min(150, ((bead.rightMm - bead.leftMm) * widthPx) / beadPx);
  const half = 0.45 * fieldWidthMm;
  // The camera looks at the bead, and seldom past its ends.
  const inset = Math.min(0.6 * half, (bead.endMm - bead.startMm) / 2);
  const x = random.between(bead.startMm + inset, bead.endMm - inset);
  const [fromMm, toMm] = [Math.max(bead.startMm + 1.5, x - half), Math.min(bead.endMm - 1.5, x + half)];
  const faults = [
    ...lookAlikes(street, random, fromMm, toMm),
    ...holes(random, fromMm, toMm),
    ...street.faults,
    ...balls(random, mixSeed(seed, 42)),
  ];
  const distanceMm = Math.max(95, fieldWidthMm * random.between(1, 2.4));
  // Nothing is built of the plate but what may be seen.
  const reach = 0.8 * fieldWidthMm + 8;
  return {
    ...street,
    area: { ...area, x0: Math.max(area.x0, x - reach), x1: Math.min(area.x1, x + reach) },
    scaleObject: random.chance(0.5) ? null : street.scaleObject,
    pose: { ...pose, target: [x, pose.target[1]], fieldWidthMm, distanceMm },
    faults,
    street: dirtier(street.street!, random),
  };
}
