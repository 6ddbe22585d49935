import { apart, bend, inner, joinParts, mean, plus, slicedArea, straight } from "./curve";
import type { At, MacroFault, MacroSpec } from "./macro-spec";

/** A fillet as its maker would describe it. Lengths in mm. */
export interface FilletMacro {
  readonly title: string;
  /** "tee": plate 2 stands on plate 1; "lap": plate 2 lies on it and shows its end. */
  readonly kind: "tee" | "lap";
  readonly angleDeg: number;
  readonly leg1Mm: number;
  readonly leg2Mm: number;
  /** Of the face over the line from toe to toe; negative is hollow. */
  readonly bulgeMm: number;
  /** Puts the bulge nearer to toe 1 (negative) or toe 2, -0.5 to 0.5. */
  readonly lean: number;
  readonly fusion1Mm: number;
  readonly fusion2Mm: number;
  /** Beyond the corner; negative: the corner was not reached. */
  readonly rootMm: number;
  /** Part of leg 2, from the corner, that did not fuse: 0 for none. */
  readonly unfused2: number;
  readonly undercutMm: number;
  readonly plate1Mm: number;
  readonly plate2Mm: number;
  readonly hazMm: number;
  readonly faults: readonly MacroFault[];
}

interface Frame {
  readonly u1: At;
  readonly u2: At;
  /** Out of either plate. */
  readonly n1: At;
  readonly n2: At;
  readonly bisector: At;
}

function frameOf(angleDeg: number): Frame {
  const t = (angleDeg * Math.PI) / 180;
  return {
    u1: [1, 0],
    u2: [Math.cos(t), Math.sin(t)],
    n1: [0, 1],
    n2: [Math.sin(t), -Math.cos(t)],
    bisector: [Math.cos(t / 2), Math.sin(t / 2)],
  };
}

/** Depth of fusion along a leg: nought at the toe, most below the middle. */
const depthSteps = [
  [0.95, 0.45],
  [0.82, 0.85],
  [0.62, 1],
  [0.4, 0.98],
] as const;

/** @param notchMm Depth of an undercut at this toe: the metal melted deeper there too. */
function fusionSide(
  u: At,
  n: At,
  leg: number,
  toe: At,
  { deepMm, rootMm, notchMm }: { readonly deepMm: number; readonly rootMm: number; readonly notchMm: number },
): readonly At[] {
  const on = (s: number, p: number): At => plus(plus([0, 0], u, s), n, p);
  const steps = depthSteps.map(([share, depth]) =>
    on(share * leg, -depth * deepMm - notchMm * Math.max(0, share / 0.55 - 0.8) ** 2),
  );
  // Near the corner the depth turns into that of the root.
  const last = on(0.18 * leg, -Math.max(0.75 * deepMm, 0.4 * Math.max(0, rootMm)));
  return [toe, ...steps, last];
}

export function filletMacro(f: FilletMacro): MacroSpec {
  const frame = frameOf(f.angleDeg);
  const { u1, u2, n1, n2, bisector } = frame;
  const toe1: At = plus([0, 0], u1, f.leg1Mm);
  const toe2: At = plus(plus([0, 0], u2, f.leg2Mm), n2, -f.undercutMm);
  const face = faceOf(toe1, toe2, f, bisector);
  const side1 = fusionSide(u1, n1, f.leg1Mm, toe1, { deepMm: f.fusion1Mm, rootMm: f.rootMm, notchMm: 0 });
  const side2 = fusionSide(u2, n2, f.leg2Mm, toe2, {
    deepMm: f.fusion2Mm,
    rootMm: f.rootMm,
    notchMm: f.undercutMm,
  });
  const tip = plus([0, 0], bisector, -f.rootMm);
  const [behind1, behind2] = behind(f, frame, side1, side2, tip);
  const outline = joinParts(face, [...behind2], [...behind1].reverse()).slice(0, -1);
  const fused = [...behind1, ...behind2];
  const root = fused.reduce((a, b) => (inner(b, bisector) < inner(a, bisector) ? b : a));
  return {
    title: f.title,
    joint: "fillet",
    ...platesOf(f, frame),
    outline,
    toes: [toe1, toe2],
    edges: edgesOf(f, frame),
    root,
    faults: [...undercutOf(f, frame), ...f.faults],
    runs: [],
    hazMm: f.hazMm,
    sizes: sizesOf(f, frame, { face, behind1, behind2, outline, root, toe1, toe2 }),
  };
}

/** The plates' edges as somebody would draw them, well off the toes. */
function edgesOf(f: FilletMacro, { u1, u2 }: Frame): MacroSpec["edges"] {
  const lapped: readonly At[] = [
    [0, 0.05 * f.plate2Mm],
    [0, f.plate2Mm - 0.2],
  ];
  const upright = [plus([0, 0], u2, f.leg2Mm + 3), plus([0, 0], u2, f.leg2Mm + 12)];
  return [
    { role: "plate-1", points: [plus([0, 0], u1, f.leg1Mm + 2), plus([0, 0], u1, f.leg1Mm + 12)] },
    { role: "plate-2", points: f.kind === "lap" ? lapped : upright },
  ];
}

function faceOf(toe1: At, toe2: At, f: FilletMacro, bisector: At): readonly At[] {
  const chord: At = [toe2[0] - toe1[0], toe2[1] - toe1[1]];
  const length = apart(toe1, toe2);
  const square: At = [-chord[1] / length, chord[0] / length];
  const out = inner(square, bisector) < 0 ? ([-square[0], -square[1]] as const) : square;
  return Array.from({ length: 241 }, (_, i) => {
    const t = i / 240;
    const height = f.bulgeMm * 4 * t * (1 - t) * (1 + f.lean * (2 * t - 1));
    return plus(mean(toe1, toe2, t), out, height);
  });
}

/** The boundary from either toe to the root: through the corner, short of it, or with a stretch that never fused. */
function behind(
  f: FilletMacro,
  { u1, u2 }: Frame,
  side1: readonly At[],
  side2: readonly At[],
  tip: At,
): readonly [readonly At[], readonly At[]] {
  if (f.unfused2 > 0) {
    const from = plus([0, 0], u2, f.unfused2 * f.leg2Mm);
    const kept = side2.filter((point) => inner(point, u2) > f.unfused2 * f.leg2Mm + 0.8);
    const end: At = [0, 0];
    const one = bend([...side1, plus([0, 0], u1, 0.05 * f.leg1Mm), end]);
    return [one, joinParts(bend([...kept, from]), straight([from, end]))];
  }
  if (f.rootMm < 0) {
    const open = -1.6 * f.rootMm;
    const ends = [plus([0, 0], u1, open), plus([0, 0], u2, open)] as const;
    const along = (side: readonly At[], u: At) => side.filter((point) => inner(point, u) > open + 0.6);
    return [
      joinParts(bend([...along(side1, u1), ends[0]]), straight([ends[0], tip])),
      joinParts(bend([...along(side2, u2), ends[1]]), straight([ends[1], tip])),
    ];
  }
  const whole = bend([...side1, tip, ...[...side2].reverse()]);
  const at = side1.length * 24;
  return [whole.slice(0, at + 1), [...whole.slice(at)].reverse()];
}

function platesOf(f: FilletMacro, { u2, n2 }: Frame): Pick<MacroSpec, "plates" | "seams"> {
  const right = f.leg1Mm + 16;
  const base: readonly At[] = [
    [-22, -f.plate1Mm],
    [right, -f.plate1Mm],
    [right, 0],
    [-22, 0],
  ];
  if (f.kind === "lap")
    return {
      plates: [
        base,
        [
          [-22, 0],
          [0, 0],
          [0, f.plate2Mm],
          [-22, f.plate2Mm],
        ],
      ],
      seams: [
        [
          [-22, 0],
          [0, 0],
        ],
      ],
    };
  const up = f.leg2Mm + 16;
  const far = f.plate2Mm / n2[0];
  const top = plus([0, 0], u2, up);
  return {
    plates: [base, [[-far, 0], [0, 0], top, [top[0] - far, top[1]]]],
    seams: [
      [
        [-far, 0],
        [0, 0],
      ],
    ],
  };
}

function undercutOf(f: FilletMacro, { u2, n2 }: Frame): readonly MacroFault[] {
  if (!(f.undercutMm > 0)) return [];
  const on = (s: number, p: number): At => plus(plus([0, 0], u2, s), n2, p);
  const [z, h] = [f.leg2Mm, f.undercutMm];
  return [
    {
      kind: "undercut",
      look: "groove",
      points: [
        on(z - 0.6 * h, 0.8 * h),
        ...bend([on(z, -h), on(z + 0.5 * h, -0.92 * h), on(z + 1.4 * h, -0.4 * h), on(z + 2.2 * h, 0)], 8),
        on(z + 2.2 * h, 0.8 * h),
      ],
      sizes: { depthMm: h },
    },
  ];
}

interface Parts {
  readonly face: readonly At[];
  readonly behind1: readonly At[];
  readonly behind2: readonly At[];
  readonly outline: readonly At[];
  readonly root: At;
  readonly toe1: At;
  readonly toe2: At;
}

/** Of the face over the straight line from toe to toe; below it negative. */
function heightsOver({ face, toe1, toe2 }: Parts, bisector: At): readonly number[] {
  const length = apart(toe1, toe2);
  const across: At = [(toe2[1] - toe1[1]) / length, -(toe2[0] - toe1[0]) / length];
  const out = inner(across, bisector) < 0 ? ([-across[0], -across[1]] as const) : across;
  return face.map((point) => inner([point[0] - toe1[0], point[1] - toe1[1]], out));
}

/** Depths of a melted boundary behind its plate, but for a tenth of the leg at each end. */
const depths = (curve: readonly At[], u: At, n: At, leg: number): readonly number[] =>
  // Finer, so that the ends of the range are met.
  straight(curve, 20)
    .filter((point) => inner(point, u) >= 0.1 * leg && inner(point, u) <= 0.9 * leg)
    .map((point) => Math.max(0, -inner(point, n)));

/** Everything that lib/section says of a fillet, from the curves themselves and by other means. */
function sizesOf(f: FilletMacro, { u1, u2, n1, n2, bisector }: Frame, p: Parts): Record<string, number> {
  const nearest = (from: At): number => Math.min(...p.face.map((point) => apart(point, from)));
  const heights = heightsOver(p, bisector);
  const one = depths(p.behind1, u1, n1, f.leg1Mm);
  const two = depths(p.behind2, u2, n2, f.leg2Mm);
  const cosine = Math.cos((f.angleDeg * Math.PI) / 360);
  const within = p.face.filter((point) => inner(point, n1) >= 0 && inner(point, n2) >= 0);
  const slope = u2[0] / u2[1];
  const whole = slicedArea(p.outline, (_, from, to) => to - from);
  const laid = slicedArea(p.outline, (y, from, to) =>
    y < 0 ? 0 : Math.max(0, to - Math.max(from, slope * y)),
  );
  return {
    "leg-1": f.leg1Mm,
    "leg-2": f.leg2Mm,
    "leg-difference": Math.abs(f.leg1Mm - f.leg2Mm),
    "joint-angle": f.angleDeg,
    throat: nearest([0, 0]),
    "nominal-throat": Math.min(
      cosine * f.leg1Mm,
      cosine * f.leg2Mm,
      ...within.map((point) => inner(point, bisector)),
    ),
    "throat-with-penetration": nearest(p.root),
    convexity: Math.max(0, ...heights),
    concavity: Math.max(0, ...heights.map((h) => -h)),
    "root-penetration": -inner(p.root, bisector),
    "fusion-1-greatest": Math.max(...one),
    "fusion-1-least": Math.min(...one),
    "fusion-2-greatest": Math.max(...two),
    "fusion-2-least": Math.min(...two),
    "face-width": apart(p.toe1, p.toe2),
    "weld-area": whole,
    "fused-parent-area": whole - laid,
    dilution: (whole - laid) / whole,
  };
}
