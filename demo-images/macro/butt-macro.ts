import { apart, bend, joinParts, slicedArea, straight } from "./curve";
import type { At, MacroFault, MacroSpec } from "./macro-spec";

/** A single-V butt weld as its maker would describe it. Lengths in mm. */
export interface ButtMacro {
  readonly title: string;
  readonly thicknessMm: number;
  readonly includedDeg: number;
  readonly landMm: number;
  readonly gapMm: number;
  /** Toes beyond the edges of the groove. */
  readonly overMm: readonly [number, number];
  /** Of the face; negative is underfilled. */
  readonly crownMm: number;
  readonly fusionMm: readonly [number, number];
  /** Part of joint face 2, from its upper end, that did not fuse; null for none. */
  readonly unfused2: readonly [from: number, to: number] | null;
  /** Beyond the back; negative: the back was not reached. */
  readonly rootMm: number;
  readonly runs: MacroSpec["runs"];
  readonly hazMm: number;
  readonly faults: readonly MacroFault[];
}

interface Groove {
  /** From the face to the back, on side 2. */
  readonly points: readonly [At, At, At];
  readonly slope: number;
}

function grooveOf(b: ButtMacro): Groove {
  const slope = Math.tan((b.includedDeg * Math.PI) / 360);
  const half = b.gapMm / 2;
  const deep = b.thicknessMm - b.landMm;
  return {
    slope,
    points: [
      [half + slope * deep, 0],
      [half, -deep],
      [half, -b.thicknessMm],
    ],
  };
}

const turned = (points: readonly At[]): readonly At[] => points.map(([x, y]) => [-x, y] as const);

/** The melted boundary of side 2 from its toe to the root, as if there were no other side. */
function sideOf(
  b: ButtMacro,
  groove: Groove,
  overMm: number,
  deepMm: number,
  open: ButtMacro["unfused2"],
): readonly At[] {
  const [top, knee, foot] = groove.points;
  const n: At = [1 / Math.hypot(1, groove.slope), -groove.slope / Math.hypot(1, groove.slope)];
  const on = (share: number, depth: number): At => [
    top[0] + share * (knee[0] - top[0]) + depth * n[0],
    top[1] + share * (knee[1] - top[1]) + depth * n[1],
  ];
  const toe: At = [top[0] + overMm, 0];
  const steps = [
    [0.12, 0.9],
    [0.3, 1],
    [0.5, 0.95],
    [0.72, 1],
    [0.92, 0.9],
  ] as const;
  const end: readonly At[] =
    b.rootMm >= 0
      ? [
          [foot[0] + 0.8 * deepMm, -b.thicknessMm + 0.45 * b.landMm],
          [foot[0] + 0.7 * deepMm, -b.thicknessMm],
        ]
      : [[foot[0], Math.min(knee[1] - 0.2, -b.thicknessMm - 1.4 * b.rootMm + 0.2)]];
  const deep = (share: number, depth: number): At => on(share, depth * deepMm);
  if (open === null) return bend([toe, ...steps.map(([s, d]) => deep(s, d)), ...end]);
  const above = steps.filter(([s]) => s < open[0] - 0.05).map(([s, d]) => deep(s, d));
  const below = steps.filter(([s]) => s > open[1] + 0.05).map(([s, d]) => deep(s, d));
  const bare = [on(open[0], 0), on(open[1], 0)] as const;
  return joinParts(bend([toe, ...above, bare[0]]), straight(bare), bend([bare[1], ...below, ...end]));
}

export function buttMacro(b: ButtMacro): MacroSpec {
  const groove = grooveOf(b);
  const side2 = sideOf(b, groove, b.overMm[1], b.fusionMm[1], b.unfused2);
  const side1 = turned(sideOf(b, groove, b.overMm[0], b.fusionMm[0], null));
  const [toe1, toe2] = [side1[0]!, side2[0]!];
  const [foot1, foot2] = [side1.at(-1)!, side2.at(-1)!];
  const face = arch(toe1, toe2, b.crownMm);
  const root =
    b.rootMm >= 0 ? arch(foot1, foot2, -b.rootMm) : bend([foot1, [0, -b.thicknessMm - b.rootMm], foot2]);
  const outline = joinParts(face, side2, [...root].reverse(), [...side1].reverse()).slice(0, -1);
  const deepest = [...root].reduce((a, p) => (p[1] < a[1] ? p : a));
  const [, knee, foot] = groove.points;
  const reach = toe2[0] + 14;
  const plate: readonly At[] = [groove.points[0], [reach, 0], [reach, -b.thicknessMm], foot, knee];
  const line = (y: number): readonly At[] => [
    [-reach + 2, y],
    [-toe2[0] - 4, y],
    [toe2[0] + 4, y],
    [reach - 2, y],
  ];
  return {
    title: b.title,
    joint: "butt",
    plates: [turned(plate), plate],
    outline,
    toes: [toe1, toe2],
    edges: [
      { role: "face", points: line(0) },
      { role: "back", points: line(-b.thicknessMm) },
      { role: "groove-1", points: turned(groove.points) },
      { role: "groove-2", points: groove.points },
    ],
    root: deepest,
    seams: [],
    faults: b.faults,
    runs: b.runs,
    hazMm: b.hazMm,
    sizes: sizesOf(b, groove, { face, root, side1, side2, outline }),
  };
}

function arch(from: At, to: At, height: number): readonly At[] {
  return Array.from({ length: 161 }, (_, i) => {
    const t = i / 160;
    return [
      from[0] + t * (to[0] - from[0]),
      from[1] + t * (to[1] - from[1]) + height * (4 * t * (1 - t)) ** 0.9,
    ];
  });
}

interface Parts {
  readonly face: readonly At[];
  readonly root: readonly At[];
  readonly side1: readonly At[];
  readonly side2: readonly At[];
  readonly outline: readonly At[];
}

/** What of the weld lies behind the old joint face of one side. */
function areaBehind(
  outline: readonly At[],
  { points: [, knee], slope }: Groove,
  t: number,
  side: 1 | -1,
): number {
  const grooveX = (y: number): number => (y < knee[1] ? knee[0] : knee[0] + slope * (y - knee[1]));
  return slicedArea(outline, (y, from, to) => {
    if (y > 0 || y < -t) return 0;
    const x = grooveX(y);
    return side === 1 ? Math.max(0, to - Math.max(from, x)) : Math.max(0, Math.min(to, -x) - from);
  });
}

/** Everything that lib/section says of a butt weld, from the curves themselves and by other means. */
function sizesOf(b: ButtMacro, groove: Groove, p: Parts): Record<string, number> {
  const t = b.thicknessMm;
  const ys = p.face.map(([, y]) => y);
  const beyond = p.root.map(([, y]) => -t - y);
  const deepest = -Math.min(...p.outline.map(([, y]) => y));
  const whole = slicedArea(p.outline, (_, from, to) => to - from);
  const fused = areaBehind(p.outline, groove, t, 1) + areaBehind(p.outline, groove, t, -1);
  const one = depthsAlong(groove.points, turned(p.side1));
  const two = depthsAlong(groove.points, p.side2);
  const through = b.rootMm >= 0;
  return {
    thickness: t,
    penetration: Math.min(t, deepest),
    unreached: Math.max(0, t - deepest),
    "face-width": p.face.at(-1)![0] - p.face[0]![0],
    reinforcement: Math.max(0, ...ys),
    underfill: Math.max(0, ...ys.map((y) => -y)),
    ...(through
      ? {
          "root-width": p.root.at(-1)![0] - p.root[0]![0],
          "root-reinforcement": Math.max(0, ...beyond),
          "root-concavity": Math.max(0, ...beyond.map((g) => -g)),
        }
      : {}),
    "fusion-1-greatest": Math.max(0, ...one),
    "fusion-1-least": Math.max(0, Math.min(...one)),
    "fusion-2-greatest": Math.max(0, ...two),
    "fusion-2-least": Math.max(0, Math.min(...two)),
    "weld-area": whole,
    "fused-parent-area": fused,
    dilution: fused / whole,
  };
}

/** Signed distance of each point of a melted boundary from the nearest of a dense joint face, but for a tenth at each end. */
function depthsAlong(groove: readonly [At, At, At], curve: readonly At[]): readonly number[] {
  const dense = straight(groove, 600);
  const along: number[] = [0];
  dense.forEach((point, i) => i > 0 && along.push(along[i - 1]! + apart(point, dense[i - 1]!)));
  const whole = along.at(-1)!;
  return curve.flatMap((point) => {
    let best = 0;
    dense.forEach((place, i) => {
      if (apart(place, point) < apart(dense[best]!, point)) best = i;
    });
    if (along[best]! < 0.1 * whole || along[best]! > 0.9 * whole) return [];
    const run = best + 1 < dense.length ? [dense[best]!, dense[best + 1]!] : [dense[best - 1]!, dense[best]!];
    const [[x0, y0], [x1, y1]] = run as [At, At];
    // Downwards along the face of side 2 the plate lies to the left, towards +x.
    const square = -((y1 - y0) * (point[0] - x0) - (x1 - x0) * (point[1] - y0));
    const size = apart(dense[best]!, point);
    return [Math.abs(square) < 1e-9 ? 0 : Math.sign(square) * size];
  });
}
