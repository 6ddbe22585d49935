import { createRandom, mixSeed, type Random } from "../noise/random";
import { buttMacro, type ButtMacro } from "./butt-macro";
import { filletMacro, type FilletMacro } from "./fillet-macro";
import type { At, MacroFault, MacroSpec } from "./macro-spec";

/** A ring about a middle; `ragged` 0 is round. */
function blob(middle: At, radiusMm: number, ragged: number, random: Random): readonly At[] {
  const waves = [2, 3, 5].map((n) => ({
    n,
    a: (ragged * random.between(0.5, 1)) / n,
    at: random.between(0, 6.28),
  }));
  return Array.from({ length: 40 }, (_, i) => {
    const t = (i * Math.PI) / 20;
    const r = radiusMm * (1 + waves.reduce((sum, { n, a, at }) => sum + a * Math.cos(n * t + at), 0));
    return [middle[0] + r * Math.cos(t), middle[1] + r * Math.sin(t)];
  });
}

function pore(middle: At, diameterMm: number, random: Random): MacroFault {
  return {
    kind: "surface-porosity",
    look: "hole",
    points: blob(middle, diameterMm / 2, 0, random),
    sizes: { diameterMm },
  };
}

function slag(middle: At, sizeMm: number, random: Random): MacroFault {
  const points = blob(middle, sizeMm / 2, 0.6, random);
  let most = 0;
  for (const a of points) for (const b of points) most = Math.max(most, Math.hypot(a[0] - b[0], a[1] - b[1]));
  return { kind: "trapped-slag", look: "inclusion", points, sizes: { lengthMm: most } };
}

function fillet(random: Random, given: Partial<FilletMacro> & Pick<FilletMacro, "title">): MacroSpec {
  const z = random.between(6.5, 9.5);
  return filletMacro({
    kind: "tee",
    angleDeg: 90,
    leg1Mm: z,
    leg2Mm: z * random.between(0.92, 1.06),
    bulgeMm: random.between(0.4, 1),
    lean: random.between(-0.2, 0.2),
    fusion1Mm: random.between(1, 1.9),
    fusion2Mm: random.between(0.8, 1.6),
    rootMm: random.between(0.6, 1.7),
    unfused2: 0,
    undercutMm: 0,
    plate1Mm: 10,
    plate2Mm: 10,
    hazMm: random.between(1.9, 2.7),
    faults: [],
    ...given,
  });
}

function butt(random: Random, given: Partial<ButtMacro> & Pick<ButtMacro, "title">): MacroSpec {
  const t = given.thicknessMm ?? 12;
  return buttMacro({
    thicknessMm: t,
    includedDeg: 60,
    landMm: 1.5,
    gapMm: 2.4,
    overMm: [random.between(0.8, 1.6), random.between(0.8, 1.6)],
    crownMm: random.between(1.2, 2.4),
    fusionMm: [random.between(0.8, 1.5), random.between(0.8, 1.5)],
    unfused2: null,
    rootMm: random.between(0.8, 1.6),
    runs: [
      { yMm: -0.7 * t, sag: 0.9 },
      { yMm: -0.38 * t, sag: 0.5 },
      { yMm: -0.12 * t, sag: 0.4 },
    ],
    hazMm: random.between(1.8, 2.5),
    faults: [],
    ...given,
  });
}

type MacroScenario = (random: Random) => MacroSpec;

/** Sections by name: sound ones, and one for each thing a section is cut for. */
export const macroScenarios = {
  "section-tee-convex": (r) =>
    fillet(r, { title: "T-joint fillet, cut and etched: convex face", bulgeMm: r.between(0.9, 1.7) }),
  "section-tee-concave": (r) =>
    fillet(r, { title: "T-joint fillet, cut and etched: hollow face", bulgeMm: r.between(-1.5, -0.7) }),
  "section-tee-skew-legs": (r) => {
    const leg = r.between(6, 7.5);
    return fillet(r, {
      title: "T-joint fillet, cut and etched: one leg much longer",
      leg1Mm: leg * r.between(1.35, 1.6),
      leg2Mm: leg,
      lean: r.between(0.1, 0.3),
    });
  },
  "section-skewed-tee": (r) =>
    fillet(r, { title: "Skewed T-joint fillet, cut and etched", angleDeg: r.between(65, 115) }),
  "section-lap": (r) => {
    const t = r.between(8.5, 10);
    return fillet(r, {
      title: "Lap joint fillet, cut and etched",
      kind: "lap",
      plate1Mm: 10,
      plate2Mm: t,
      leg2Mm: t - r.between(0.8, 1.6),
    });
  },
  "section-tee-no-root": (r) =>
    fillet(r, {
      title: "T-joint fillet, cut and etched: the root was not reached",
      rootMm: -r.between(0.6, 1.2),
      fusion1Mm: r.between(0.5, 0.9),
      fusion2Mm: r.between(0.5, 0.9),
    }),
  "section-tee-lack-of-fusion": (r) => {
    const unfused2 = r.between(0.35, 0.55);
    const leg = r.between(7.5, 9);
    return fillet(r, {
      title: "T-joint fillet, cut and etched: not fused to the upright",
      leg2Mm: leg,
      unfused2,
      rootMm: 0,
      faults: [
        {
          kind: "lack-of-fusion",
          look: "line",
          points: [
            [0, 0],
            [0, unfused2 * leg],
          ],
          sizes: { lengthMm: unfused2 * leg },
        },
      ],
    });
  },
  "section-tee-undercut": (r) =>
    fillet(r, {
      title: "T-joint fillet, cut and etched: undercut in the upright",
      undercutMm: r.between(0.7, 1.3),
    }),
  "section-tee-slag": (r) =>
    fillet(r, {
      title: "T-joint fillet, cut and etched: slag and a pore inside",
      faults: [slag([1.1, 1.4], r.between(0.9, 1.6), r), pore([3.1, 2.3], r.between(0.7, 1.2), r)],
    }),
  "section-butt": (r) => butt(r, { title: "Single-V butt weld, cut and etched" }),
  "section-butt-no-root": (r) =>
    butt(r, {
      title: "Single-V butt weld, cut and etched: the root was not reached",
      landMm: 2.2,
      rootMm: -r.between(1.2, 2),
    }),
  "section-butt-lack-of-fusion": (r) =>
    butt(r, {
      title: "Single-V butt weld, cut and etched: one joint face not fused",
      unfused2: [r.between(0.25, 0.35), r.between(0.5, 0.62)],
    }),
} as const satisfies Record<string, MacroScenario>;

export type MacroName = keyof typeof macroScenarios;
export const macroNames = Object.keys(macroScenarios) as [MacroName, ...MacroName[]];

export function macroSpec(name: MacroName, seed: number): MacroSpec {
  return macroScenarios[name](createRandom(mixSeed(seed, 71)));
}
