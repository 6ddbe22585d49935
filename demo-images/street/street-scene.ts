import type { BeadShape } from "../geometry/bead";
import type { Fault } from "../imperfections/paint-fault";
import { lightings } from "../light/lamp";
import { benches } from "../materials/bench";
import { finishes } from "../materials/plate-look";
import { createRandom, mixSeed, type Random } from "../noise/random";
import type { RenderParamsInput } from "../params";
import { scenarioNames, type ScenarioName } from "../scenarios";
import type { SceneSpec } from "../scene";
import type { HeatBand, StreetLook, ToeBand } from "./street-look";

/** Scenarios no reader is ever trained on, so that it can be tried on joints it has not seen. */
export const keptBackScenarios = [
  "tee-undercut",
  "stringer-ropey",
  "lap-cold-lap",
  "flat-wide-weave",
  "corner-linear-pores",
  "stainless-temper-colour",
] as const satisfies readonly ScenarioName[];

export const trainingScenarios: readonly ScenarioName[] = scenarioNames.filter(
  (name) => !(keptBackScenarios as readonly string[]).includes(name),
);

const oneOf = <T>(random: Random, list: readonly T[]): T => list[Math.floor(list.length * random.next())]!;

/** How a bead may be laid; a groove is filled by its bead, so there it stays about as wide as it is. */
function streetBead(shape: BeadShape, random: Random, filled: boolean, curve: number): BeadShape {
  const middle = (shape.leftMm + shape.rightMm) / 2;
  const half =
    ((shape.rightMm - shape.leftMm) / 2) * (filled ? random.between(0.97, 1.2) : random.between(0.75, 1.5));
  const { ripple } = shape;
  return {
    ...shape,
    leftMm: middle - half,
    rightMm: middle + half,
    crownMm: shape.crownMm * random.between(0.5, 1.6),
    capPower: random.between(0.55, 1.5),
    ripple: {
      ...ripple,
      pitchMm: ripple.pitchMm * random.logNormal(1.1, 0.35),
      heightMm: ripple.heightMm * random.logNormal(1, 0.5),
      lag: ripple.lag * random.between(0.6, 1.3),
    },
    raggedMm: random.logNormal(0.16, 0.6),
    wanderMm: curve > 0 ? curve : random.logNormal(0.35, 0.6),
    wanderLengthMm: curve > 0 ? random.between(55, 110) : random.between(20, 60),
    unevenWidth: random.logNormal(0.05, 0.7),
    unevenLengthMm: random.between(5, 28),
    startLump: random.between(0, 0.6),
    craterDepthMm: random.between(0, 1.2),
    roughMm: random.logNormal(0.02, 0.7),
    seed: mixSeed(shape.seed, Math.floor(1e9 * random.next())),
  };
}

function toeBands(random: Random): ToeBand[] {
  return (["left", "right"] as const).flatMap((side) =>
    Array.from({ length: random.chance(0.55) ? (random.chance(0.3) ? 2 : 1) : 0 }, (): ToeBand => {
      const mask = oneOf(random, ["slag", "slag", "soot", "crack"] as const);
      return {
        side,
        mask,
        insideMm: random.chance(0.5) ? random.between(0, 0.45) : 0,
        outsideMm: mask === "crack" ? random.between(0.1, 0.5) : random.logNormal(1, 0.6),
        heightMm: mask === "slag" ? random.between(0, 0.3) : mask === "crack" ? -random.between(0, 0.4) : 0,
        cover: random.between(0.25, 1.05),
        strength: random.between(0.35, 1),
      };
    }),
  );
}

function heatBands(random: Random): HeatBand[] {
  if (random.chance(0.45)) return [];
  return (["left", "right"] as const).flatMap((side) => {
    let from = random.chance(0.5) ? 0 : random.between(0.2, 4);
    return Array.from({ length: Math.floor(5 * random.next()) }, (): HeatBand => {
      const to = from + random.logNormal(1.6, 0.6);
      const colour = Math.floor(4 * random.next()) as HeatBand["colour"];
      const band = { side, colour, fromMm: from, toMm: to, strength: random.between(0.15, 0.9) };
      from = to + (random.chance(0.5) ? 0 : random.between(0, 1.5));
      return band;
    });
  });
}

function streetLook(random: Random, seed: number): StreetLook {
  return {
    seed,
    toeBands: toeBands(random),
    heatBands: heatBands(random),
    pitDepthMm: random.chance(0.8) ? random.logNormal(0.045, 0.7) : 0,
    pitSizeMm: random.logNormal(0.8, 0.5),
    grit: random.chance(0.75) ? random.between(0.15, 1) : 0,
    mottle: random.chance(0.7) ? random.between(0.15, 0.95) : 0,
    mottleMm: random.logNormal(3, 0.6),
    specks: random.chance(0.5) ? Math.floor(90 * random.next() ** 2) : 0,
    threads: random.chance(0.4) ? Math.floor(6 * random.next()) : 0,
    stamps: random.chance(0.2) ? 1 : 0,
    patches: random.chance(0.25) ? 1 + Math.floor(2 * random.next()) : 0,
  };
}

function streetFaults(spec: SceneSpec, random: Random): Fault[] {
  const kept = spec.faults.filter(() => random.chance(0.75));
  const seed = (): number => Math.floor(1e9 * random.next());
  if (random.chance(0.5))
    kept.push({
      kind: "spatter",
      count: Math.floor(140 * random.next() ** 2),
      medianMm: random.between(0.4, 1.2),
      spreadMm: random.between(4, 20),
      seed: seed(),
    });
  if (random.chance(0.35))
    kept.push({
      kind: "soot",
      soot: random.between(0.1, 0.9),
      fume: random.next(),
      reachMm: random.between(4, 16),
      seed: seed(),
    });
  return kept;
}

function streetPose(spec: SceneSpec, random: Random): SceneSpec["pose"] {
  const last = spec.beads[spec.beads.length - 1]!;
  const fieldWidthMm = random.between(48, 150);
  // Close up the camera looks at some part of the bead; from farther off at all of it.
  const spare = Math.max(0, (last.endMm - last.startMm - 0.8 * fieldWidthMm) / 2);
  const middle = (last.startMm + last.endMm) / 2;
  return {
    ...spec.pose,
    target: [
      middle + random.between(-1, 1) * (spare + 4),
      (last.leftMm + last.rightMm) / 2 + random.normal(0, 4),
    ],
    fieldWidthMm,
    distanceMm: Math.max(95, fieldWidthMm * random.between(0.9, 2.2)),
    tiltDeg: Math.abs(random.normal(0, 16)) % 42,
    azimuthDeg: random.between(-180, 180),
    rollDeg: random.chance(0.7) ? random.normal(0, 8) : random.between(-180, 180),
  };
}

/** How far the middle of a rule, card or strip must stay off the widest toe, mm. */
const OBJECT_CLEARANCE_MM = 15.5;

const clearOf = ({ scaleObject }: SceneSpec, beads: readonly BeadShape[]): boolean =>
  scaleObject !== null &&
  beads.every(
    ({ leftMm, rightMm }) =>
      Math.abs(scaleObject.placement.vMm) > Math.max(-leftMm, rightMm) + OBJECT_CLEARANCE_MM,
  );

/** Now and then another bead lies beside this one on a flat plate; it was laid before it. */
function neighbours(bead: BeadShape, spec: SceneSpec, random: Random, odds: number): readonly BeadShape[] {
  if (!random.chance(odds)) return [];
  const width = bead.rightMm - bead.leftMm;
  const away = width * random.between(1.5, 3.2) * (random.chance(0.5) ? 1 : -1);
  const [leftMm, rightMm] = [bead.leftMm + away, bead.rightMm + away];
  const { y0, y1 } = spec.area;
  if (leftMm < y0 + 4 || rightMm > y1 - 4) return [];
  const slip = random.normal(0, 6);
  const seed = mixSeed(bead.seed, 31);
  return [{ ...bead, leftMm, rightMm, startMm: bead.startMm + slip, endMm: bead.endMm + slip, seed }];
}

/**
 * One scene of the street made out of a scenario's: the same joint, met anywhere but on the demo's bench. `twoBeads`: how
 * often another bead lies beside it where there is room on a flat plate.
 */
export function streetScene(spec: SceneSpec, seed: number, twoBeads = 0.2): SceneSpec {
  const random = createRandom(seed);
  const filled = spec.profile.facets.length > 3;
  const flat = spec.profile.facets.length === 1;
  const curve = flat && random.chance(0.35) ? random.between(1.5, 7) : 0;
  const laid = spec.beads.map((shape) => streetBead(shape, random, filled, curve));
  const beads = flat && laid.length === 1 ? [...neighbours(laid[0]!, spec, random, twoBeads), ...laid] : laid;
  return {
    ...spec,
    beads,
    plate: {
      ...spec.plate,
      finish: oneOf(random, finishes),
      seed: mixSeed(seed, 20),
      heatBandMm: random.between(1, 9),
      rust: random.chance(0.5) ? random.next() : 0,
      groundStripMm: random.chance(0.3) ? random.between(3, 14) : 0,
    },
    weld: { seed: mixSeed(seed, 21), oxide: random.next(), tint: random.chance(0.5) ? random.next() : 0 },
    faults: streetFaults(spec, random),
    bench: oneOf(random, benches),
    lighting: oneOf(random, lightings),
    lightTurnDeg: random.between(-180, 180),
    scaleObject: curve > 0 || random.chance(0.35) || !clearOf(spec, beads) ? null : spec.scaleObject,
    pose: streetPose({ ...spec, beads }, random),
    exposureEv: random.chance(0.35) ? random.between(0.9, 2.7) : random.normal(0.2, 0.6),
    street: streetLook(random, mixSeed(seed, 22)),
  };
}

/** What the phone does to it. */
export function streetParams(scenario: ScenarioName, seed: number, megapixels: number): RenderParamsInput {
  const random = createRandom(mixSeed(seed, 23));
  return {
    scenario,
    seed,
    megapixels,
    noise: random.between(0.5, 7),
    motionPx: random.chance(0.25) ? random.between(0, 3) : 0,
    defocus: random.between(0, 1.3),
    warmth: Math.max(-0.3, Math.min(0.3, random.normal(0.02, 0.08))),
    distortion: random.between(-0.03, 0.05),
  };
}
