import { renderScene, type Pixel } from "@/demo-images";
import type { BeadShape } from "@/demo-images/geometry/bead";
import { createRandom, mixSeed, type Random } from "@/demo-images/noise/random";
import type { SceneSpec } from "@/demo-images/scene";
import type { ScenarioName } from "@/demo-images/scenarios";
import { keptBackScenarios, streetParams, streetScene } from "@/demo-images/street/street-scene";
import type { Truth } from "@/demo-images/truth";
import type { Pixels } from "@/lib/trace";
import { pixelsOf } from "./pictures";

/** Toes of what is in sight of one bead, left and right, each cut from the one end to the other. */
export type Sight = readonly [left: readonly Pixel[], right: readonly Pixel[]];

export interface PassPicture {
  readonly scenario: string;
  readonly image: Pixels;
  /** In the order laid; null: too little of it is in sight. */
  readonly passes: readonly (Sight | null)[];
}

/** Two single beads beside each other, or passes that lie against each other. */
export type SeveralKind = "pair" | "pass";

const seeds = { pair: 9304, pass: 9331 } as const;
const flat = keptBackScenarios.filter((name) => !/tee|lap|corner/.test(name));
const sources: readonly ScenarioName[] = [
  ...flat,
  "stringer-pad-good",
  "groove-trapped-slag",
  "tee-undercut",
];
/** A pass of which less than this is in sight is none to draw a line along, shares of its width. */
const LEAST_IN_SIGHT = 0.4;

/** The n-th picture of several beads; null: there is no room for two. */
export function severalBeads(kind: SeveralKind, n: number): PassPicture | null {
  const scenario = kind === "pair" ? flat[n % flat.length]! : sources[n % sources.length]!;
  const seed = mixSeed(seeds[kind], n) % 2147483647;
  let beads: readonly BeadShape[] = [];
  const several = (spec: SceneSpec): SceneSpec => {
    const scene = streetScene(spec, mixSeed(seed, 24), kind === "pair" ? 1 : 0);
    const laid = kind === "pass" ? withPasses(scene, createRandom(mixSeed(seed, 25))) : scene;
    beads = laid.beads;
    if (beads.length < 2) throw new NoRoom();
    return laid;
  };
  try {
    const { rgb, width, height, truth } = renderScene(streetParams(scenario, seed, 1.2), several);
    return { scenario, image: pixelsOf(rgb, width, height), passes: inSight(beads, truth) };
  } catch (error) {
    if (error instanceof NoRoom) return null;
    throw error;
  }
}

class NoRoom extends Error {}

/** Where the joint's own scene has one bead, two more against it: beside it on a plate, on either toe of a fillet. */
function withPasses(scene: SceneSpec, random: Random): SceneSpec {
  if (scene.beads.length > 1) return scene;
  const first = scene.beads[0]!;
  const width = first.rightMm - first.leftMm;
  const side = random.chance(0.5) ? 1 : -1;
  const pitch = width * random.between(0.55, 0.95);
  const offs = scene.profile.facets.length === 1 ? [side * pitch, 2 * side * pitch] : [-pitch / 2, pitch / 2];
  const more = offs.map((off, i): BeadShape => {
    const [slip, shorter] = [random.normal(0, 2), random.between(0, 3)];
    return {
      ...first,
      leftMm: first.leftMm + off,
      rightMm: first.rightMm + off,
      startMm: first.startMm + slip + shorter,
      endMm: first.endMm + slip - shorter,
      seed: mixSeed(first.seed, 41 + i),
    };
  });
  return { ...scene, beads: [first, ...more] };
}

/** A pass laid later hides of an earlier one what it covers: there its toe is the earlier one's edge. */
function inSight(beads: readonly BeadShape[], { weld, before = [] }: Truth): readonly (Sight | null)[] {
  const toes: readonly Sight[] = [...before, [weld.leftToePx, weld.rightToePx]];
  return beads.map((bead, i) => {
    let [left, right] = toes[i]!;
    let [from, to] = [bead.leftMm, bead.rightMm];
    for (const [j, later] of beads.entries()) {
      if (j <= i) continue;
      if (later.leftMm > from && later.leftMm < to) [right, to] = [toes[j]![0], later.leftMm];
      if (later.rightMm > from && later.rightMm < to) [left, from] = [toes[j]![1], later.rightMm];
      if (later.leftMm <= from && later.rightMm >= to) return null;
    }
    return to - from < LEAST_IN_SIGHT * (bead.rightMm - bead.leftMm) ? null : [left, right];
  });
}
