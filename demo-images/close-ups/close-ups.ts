import { added, bead, fault, greatest, groove, scene, sum, type CloseUp } from "./close-up";

const gas: readonly CloseUp[] = [
  {
    id: "surface-porosity",
    scenario: "tee-porosity-soot",
    keeps: ["porosity", "soot"],
    changes: [
      fault("porosity", [
        { count: 2, medianMm: 0.8, fromMm: -7, toMm: 7 },
        { count: 7, medianMm: 1.1, fromMm: -14, toMm: 14 },
        { count: 20, medianMm: 1.5, fromMm: -18, toMm: 18 },
      ]),
    ],
    at: [0, -1],
    fieldMm: 34,
    grows: sum("areaMmSquared"),
  },
  {
    id: "wormhole",
    scenario: "gas-marks-wormholes",
    keeps: ["wormholes"],
    changes: [
      fault("wormholes", [
        { count: 2, fromMm: -4, toMm: 6 },
        { count: 5, fromMm: -10, toMm: 10 },
        { count: 11, fromMm: -15, toMm: 15 },
      ]),
    ],
    at: [0, 0],
    fieldMm: 34,
    grows: sum("lengthMm"),
  },
  {
    id: "gas-mark",
    scenario: "gas-marks-wormholes",
    keeps: ["gas-marks"],
    changes: [
      fault("gas-marks", [
        { count: 3, fromMm: -6, toMm: 6 },
        { count: 9, fromMm: -14, toMm: 14 },
        { count: 22, fromMm: -18, toMm: 18 },
      ]),
    ],
    at: [0, 0],
    fieldMm: 36,
    grows: sum("lengthMm"),
  },
  {
    id: "crater-pipe",
    scenario: "corner-linear-pores",
    keeps: ["crater-pipe"],
    changes: [fault("crater-pipe", [{ diameterMm: 0.7 }, { diameterMm: 1.3 }, { diameterMm: 2.2 }])],
    at: [34, 0],
    fieldMm: 26,
    grows: greatest("diameterMm"),
  },
];

const fusion: readonly CloseUp[] = [
  {
    id: "overlap",
    scenario: "lap-cold-lap",
    keeps: ["overlap"],
    changes: [
      fault("overlap", [
        { fromMm: -8, toMm: 8, reachMm: 0.8, heightMm: 0.8 },
        { fromMm: -14, toMm: 13, reachMm: 1.4, heightMm: 1.2 },
        { fromMm: -20, toMm: 18, reachMm: 2, heightMm: 1.4 },
      ]),
    ],
    at: [0, -2],
    fieldMm: 38,
    grows: greatest("reachMm"),
  },
  {
    id: "lack-of-fusion",
    scenario: "corner-linear-pores",
    keeps: ["lack-of-fusion"],
    changes: [
      fault("lack-of-fusion", [
        { fromMm: -6, toMm: 4, widthMm: 0.2 },
        { fromMm: -12, toMm: 9, widthMm: 0.3 },
        { fromMm: -20, toMm: 20, widthMm: 0.45 },
      ]),
    ],
    at: [0, -1.5],
    fieldMm: 34,
    grows: sum("lengthMm"),
  },
  {
    id: "burn-through",
    scenario: "burn-through-sheet",
    keeps: ["burn-through", "soot"],
    changes: [
      fault("burn-through", [
        { xMm: 2, lengthMm: 3, widthMm: 2.4 },
        { xMm: 2, lengthMm: 7, widthMm: 4.4 },
        { xMm: 2, lengthMm: 13, widthMm: 6.5 },
      ]),
    ],
    at: [2, 0],
    fieldMm: 36,
    grows: sum("areaMmSquared"),
  },
  {
    id: "incomplete-penetration",
    scenario: "root-side",
    keeps: ["root-stretch"],
    changes: [
      fault("root-stretch", [{}, {}, {}], 1),
      groove([
        { thicknessMm: 1.1, rootGapMm: 1.5, includedAngleDeg: 30 },
        { thicknessMm: 1.5, rootGapMm: 1.5, includedAngleDeg: 30 },
        { thicknessMm: 2.2, rootGapMm: 1.7, includedAngleDeg: 30 },
      ]),
    ],
    at: [29, 0],
    fieldMm: 20,
    grows: greatest("depthMm"),
  },
  {
    id: "tungsten-inclusion",
    scenario: "tig-butt-pulled",
    keeps: ["inclusion"],
    changes: [
      groove([
        { thicknessMm: 3, rootGapMm: 1, includedAngleDeg: 0 },
        { thicknessMm: 3, rootGapMm: 1, includedAngleDeg: 0 },
        { thicknessMm: 3, rootGapMm: 1, includedAngleDeg: 0 },
      ]),
      fault("inclusion", [{ diameterMm: 0.7 }, { diameterMm: 1.3 }, { diameterMm: 2.2 }]),
    ],
    at: [-18, 0],
    fieldMm: 20,
    pose: { tiltDeg: 14, azimuthDeg: 10 },
    grows: greatest("diameterMm"),
  },
  {
    id: "copper-inclusion",
    scenario: "stringer-burnback",
    keeps: ["inclusion"],
    changes: [
      bead([{ endMm: 60 }, { endMm: 60 }, { endMm: 60 }]),
      fault("inclusion", [
        { xMm: 0, diameterMm: 1.3 },
        { xMm: 0, diameterMm: 2.6 },
        { xMm: 0, diameterMm: 4.2 },
      ]),
    ],
    at: [0, 0],
    fieldMm: 26,
    grows: greatest("diameterMm"),
  },
];

const shape: readonly CloseUp[] = [
  {
    id: "undercut",
    scenario: "tee-undercut",
    keeps: ["undercut"],
    changes: [
      scene(() => ({ lighting: "window", exposureEv: 0.1 })),
      fault("undercut", [
        { side: "left", fromMm: -6, toMm: 8, depthMm: 0.4, widthMm: 1.2, broken: 0.5 },
        { side: "left", fromMm: -15, toMm: 13, depthMm: 0.9, widthMm: 2, broken: 0.3 },
        { side: "left", fromMm: -24, toMm: 24, depthMm: 1.7, widthMm: 3, broken: 0.1 },
      ]),
    ],
    at: [0, -3],
    fieldMm: 28,
    grows: greatest("depthMm"),
  },
  {
    id: "convex-bead",
    scenario: "stringer-ropey",
    keeps: ["bead-shape", "soot"],
    changes: [
      bead([
        { leftMm: -3.1, rightMm: 3.1, crownMm: 1.9, capPower: 0.8 },
        { leftMm: -2.6, rightMm: 2.6, crownMm: 2.4, capPower: 0.55 },
        { leftMm: -2.3, rightMm: 2.3, crownMm: 3.3, capPower: 0.42 },
      ]),
    ],
    at: [0, 0],
    fieldMm: 34,
    pose: { tiltDeg: 26 },
    grows: greatest("heightMm"),
  },
  {
    id: "flat-wide-bead",
    scenario: "flat-wide-weave",
    keeps: ["bead-shape"],
    changes: [
      bead([
        { leftMm: -6.4, rightMm: 6.4 },
        { leftMm: -8.6, rightMm: 8.6 },
        { leftMm: -11.5, rightMm: 11.5, crownMm: 0.7 },
      ]),
    ],
    at: [0, 0],
    fieldMm: 48,
    grows: greatest("widthMm"),
  },
  {
    id: "concave-face",
    scenario: "tee-hollow-undersized",
    keeps: [],
    changes: [
      added([
        { kind: "bead-shape", id: "concave-face" },
        { kind: "bead-shape", id: "concave-face" },
        { kind: "bead-shape", id: "concave-face" },
      ]),
      scene(() => ({ lighting: "raking" })),
      bead([
        { leftMm: -4.6, rightMm: 4.6, crownMm: -0.4 },
        { leftMm: -4.6, rightMm: 4.6, crownMm: -1.1 },
        { leftMm: -4.6, rightMm: 4.6, crownMm: -2 },
      ]),
    ],
    at: [0, 0],
    fieldMm: 34,
    grows: greatest("concavityMm"),
  },
  {
    id: "excess-penetration",
    scenario: "root-side",
    keeps: ["bead-shape"],
    changes: [bead([{ crownMm: 1.3 }, { crownMm: 2.4 }, { crownMm: 3.8, leftMm: -2.8, rightMm: 2.8 }], 2)],
    at: [-29, 0],
    fieldMm: 32,
    pose: { tiltDeg: 24 },
    grows: greatest("heightMm"),
  },
  {
    id: "root-concavity",
    scenario: "root-side",
    keeps: ["root-stretch"],
    changes: [
      fault("root-stretch", [{}, {}, {}], 0),
      bead([{ crownMm: -0.25 }, { crownMm: -0.55 }, { crownMm: -1 }], 1),
    ],
    at: [-1, 0],
    fieldMm: 28,
    grows: greatest("depthMm"),
  },
  {
    id: "open-crater",
    scenario: "crater-crack",
    keeps: ["open-crater"],
    changes: [bead([{ craterDepthMm: 0.5 }, { craterDepthMm: 1.1 }, { craterDepthMm: 1.9 }])],
    at: [6, 0],
    fieldMm: 34,
    grows: greatest("depthMm"),
  },
  {
    id: "underfill",
    scenario: "groove-underfill",
    keeps: [],
    changes: [
      added([
        { kind: "bead-shape", id: "underfill" },
        { kind: "bead-shape", id: "underfill" },
        { kind: "bead-shape", id: "underfill" },
      ]),
      groove([
        { thicknessMm: 8, rootGapMm: 5, includedAngleDeg: 45 },
        { thicknessMm: 9, rootGapMm: 5, includedAngleDeg: 45 },
        { thicknessMm: 10.5, rootGapMm: 5, includedAngleDeg: 45 },
      ]),
    ],
    at: [0, 0],
    fieldMm: 36,
    grows: greatest("depthMm"),
  },
  {
    id: "uneven-legs",
    scenario: "tee-uneven-legs",
    keeps: [],
    changes: [
      added([
        { kind: "bead-shape", id: "uneven-legs" },
        { kind: "bead-shape", id: "uneven-legs" },
        { kind: "bead-shape", id: "uneven-legs" },
      ]),
      bead([
        { leftMm: -5.6, rightMm: 4.6 },
        { leftMm: -7, rightMm: 3.9 },
        { leftMm: -8.6, rightMm: 3 },
      ]),
    ],
    at: [0, -1],
    fieldMm: 38,
    grows: (all) => Math.max(...all.map((sizes) => sizes.lowerLegMm! - sizes.upperLegMm!)),
  },
  {
    id: "undersized",
    scenario: "tee-hollow-undersized",
    keeps: [],
    changes: [
      added([
        { kind: "bead-shape", id: "undersized", targetLegMm: 6 },
        { kind: "bead-shape", id: "undersized", targetLegMm: 6 },
        { kind: "bead-shape", id: "undersized", targetLegMm: 6 },
      ]),
      bead([
        { leftMm: -4, rightMm: 4, crownMm: 0.2 },
        { leftMm: -3, rightMm: 3, crownMm: 0.2 },
        { leftMm: -2, rightMm: 2, crownMm: 0.2 },
      ]),
    ],
    at: [0, 0],
    fieldMm: 34,
    grows: (all) => Math.max(...all.map((sizes) => sizes.targetLegMm! - sizes.legMm!)),
  },
  {
    id: "oversized",
    scenario: "tee-uneven-legs",
    keeps: [],
    changes: [
      added([
        { kind: "bead-shape", id: "oversized", targetLegMm: 6 },
        { kind: "bead-shape", id: "oversized", targetLegMm: 6 },
        { kind: "bead-shape", id: "oversized", targetLegMm: 6 },
      ]),
      bead([
        { leftMm: -5.4, rightMm: 5.4 },
        { leftMm: -7.2, rightMm: 7.2 },
        { leftMm: -9.6, rightMm: 9.6 },
      ]),
    ],
    at: [0, 0],
    fieldMm: 38,
    grows: greatest("legMm"),
  },
  {
    id: "wandering",
    scenario: "poor-start-arc-strike",
    keeps: ["bead-shape"],
    changes: [
      bead([
        { wanderMm: 1.6, startLump: 0.3 },
        { wanderMm: 3.2, startLump: 0.3 },
        { wanderMm: 6, startLump: 0.3 },
      ]),
    ],
    at: [0, 0],
    fieldMm: 84,
    grows: greatest("amplitudeMm"),
  },
  {
    id: "uneven-width",
    scenario: "vertical-up-uneven",
    keeps: ["bead-shape"],
    changes: [bead([{ unevenWidth: 0.1 }, { unevenWidth: 0.2 }, { unevenWidth: 0.36 }])],
    at: [0, 0],
    fieldMm: 60,
    pose: { azimuthDeg: 8 },
    grows: (all) => Math.max(...all.map((sizes) => sizes.mostWidthMm! - sizes.leastWidthMm!)),
  },
  {
    id: "poor-start",
    scenario: "poor-start-arc-strike",
    keeps: ["poor-start"],
    changes: [
      bead([
        { startLump: 0.4, wanderMm: 0.3 },
        { startLump: 0.9, wanderMm: 0.3 },
        { startLump: 1.6, wanderMm: 0.3 },
      ]),
    ],
    at: [-33, 0],
    fieldMm: 36,
    pose: { tiltDeg: 26 },
    grows: (all) => Math.max(...all.map((sizes) => sizes.heightMm! - sizes.usualHeightMm!)),
  },
  {
    id: "misalignment",
    scenario: "groove-underfill",
    keeps: [],
    changes: [
      added([
        { kind: "bead-shape", id: "misalignment" },
        { kind: "bead-shape", id: "misalignment" },
        { kind: "bead-shape", id: "misalignment" },
      ]),
      groove([
        { thicknessMm: 8, rootGapMm: 5, includedAngleDeg: 45, stepMm: 0.8 },
        { thicknessMm: 8, rootGapMm: 5, includedAngleDeg: 45, stepMm: 1.8 },
        { thicknessMm: 8, rootGapMm: 5, includedAngleDeg: 45, stepMm: 3.4 },
      ]),
      bead([{ crownMm: 1.2 }, { crownMm: 1.2 }, { crownMm: 1.2 }], 1),
    ],
    at: [-62, 0],
    fieldMm: 46,
    pose: { tiltDeg: 58, azimuthDeg: -82, rollDeg: -86 },
    grows: greatest("stepMm"),
  },
  {
    id: "missing-length",
    scenario: "tee-toe-crack-short",
    keeps: ["missing-length"],
    changes: [bead([{ endMm: 38 }, { endMm: 26 }, { endMm: 8 }])],
    at: [24, 0],
    fieldMm: 64,
    grows: sum("missingMm"),
  },
  {
    id: "irregular-surface",
    scenario: "stringer-burnback",
    keeps: ["irregular-surface"],
    changes: [
      bead([{ endMm: 60 }, { endMm: 60 }, { endMm: 60 }]),
      fault("irregular-surface", [{ heightMm: 0.7 }, { heightMm: 1.6 }, { heightMm: 2.8 }]),
    ],
    at: [-4, 0],
    fieldMm: 44,
    pose: { tiltDeg: 24 },
    grows: greatest("heightMm"),
  },
  {
    id: "sagging",
    scenario: "tee-sagging",
    keeps: ["sagging"],
    changes: [fault("sagging", [{ bellyMm: 1 }, { bellyMm: 2.3 }, { bellyMm: 4 }])],
    at: [-2, -1],
    fieldMm: 44,
    grows: greatest("sagMm"),
  },
  {
    id: "steep-toe",
    scenario: "tee-sagging",
    keeps: ["steep-toe"],
    changes: [
      fault("steep-toe", [
        { fromMm: -14, toMm: 14, heightMm: 0.7 },
        { fromMm: -18, toMm: 18, heightMm: 1.4 },
        { fromMm: -24, toMm: 24, heightMm: 2.3 },
      ]),
    ],
    at: [0, -3],
    fieldMm: 34,
    grows: sum("lengthMm"),
  },
  {
    id: "angular-misalignment",
    scenario: "tig-butt-pulled",
    keeps: ["bead-shape"],
    changes: [
      groove([
        { thicknessMm: 3, rootGapMm: 1, includedAngleDeg: 0, tiltDeg: 5 },
        { thicknessMm: 3, rootGapMm: 1, includedAngleDeg: 0, tiltDeg: 14 },
        { thicknessMm: 3, rootGapMm: 1, includedAngleDeg: 0, tiltDeg: 26 },
      ]),
    ],
    at: [-50, 0],
    fieldMm: 74,
    pose: { tiltDeg: 64, azimuthDeg: -84, rollDeg: -88 },
    grows: greatest("angleDeg"),
  },
  {
    id: "wide-root-gap",
    scenario: "tee-toe-crack-short",
    keeps: ["wide-root-gap"],
    changes: [fault("wide-root-gap", [{ gapMm: 1 }, { gapMm: 2.2 }, { gapMm: 4 }])],
    at: [30, 0],
    fieldMm: 44,
    grows: greatest("gapMm"),
  },
];

const slag: readonly CloseUp[] = [
  {
    id: "trapped-slag",
    scenario: "tee-toes-slag",
    keeps: ["slag-line"],
    changes: [
      fault("slag-line", [
        { along: { toe: "right", fromMm: -5, toMm: 5 }, widthMm: 0.8 },
        { along: { toe: "right", fromMm: -13, toMm: 11 }, widthMm: 1.4 },
        { along: { toe: "right", fromMm: -24, toMm: 24 }, widthMm: 2.3 },
      ]),
    ],
    at: [0, 2],
    fieldMm: 36,
    grows: greatest("widthMm"),
  },
  {
    id: "stuck-slag",
    scenario: "flat-wide-weave",
    keeps: [],
    changes: [
      added([
        [{ kind: "stuck-slag", x: 2, y: 2.4, radiusMm: 1.6, heightMm: 0.3, seed: 71 }],
        [
          { kind: "stuck-slag", x: 2, y: 3, radiusMm: 3.2, heightMm: 0.35, seed: 71 },
          { kind: "stuck-slag", x: -9, y: -2, radiusMm: 1.8, heightMm: 0.3, seed: 72 },
        ],
        [
          { kind: "stuck-slag", x: 2, y: 2.6, radiusMm: 5, heightMm: 0.4, seed: 71 },
          { kind: "stuck-slag", x: -10, y: -1.5, radiusMm: 4, heightMm: 0.4, seed: 72 },
          { kind: "stuck-slag", x: 13, y: -2.5, radiusMm: 3.4, heightMm: 0.4, seed: 73 },
        ],
      ]),
    ],
    at: [0, 0],
    fieldMm: 42,
    grows: sum("areaMmSquared"),
  },
];

const surface: readonly CloseUp[] = [
  {
    id: "spatter",
    scenario: "stainless-lap-spatter",
    keeps: ["spatter"],
    changes: [
      fault("spatter", [
        { count: 30, medianMm: 0.6 },
        { count: 130, medianMm: 0.8 },
        { count: 420, medianMm: 1.1 },
      ]),
    ],
    at: [0, -2],
    fieldMm: 44,
    grows: sum("diameterMm"),
  },
  {
    id: "arc-strike",
    scenario: "poor-start-arc-strike",
    keeps: ["arc-strike"],
    changes: [fault("arc-strike", [{ diameterMm: 2 }, { diameterMm: 3.8 }, { diameterMm: 6.5 }])],
    at: [-20, 11],
    fieldMm: 34,
    grows: greatest("diameterMm"),
  },
  {
    id: "temper-colour",
    scenario: "stainless-temper-colour",
    keeps: ["temper-colour"],
    changes: [
      scene((spec, severity) => ({
        plate: { ...spec.plate, heatBandMm: [4.5, 9.5, 16][severity - 1]! },
        weld: { ...spec.weld, tint: [0.3, 0.7, 1][severity - 1]!, oxide: [0.1, 0.25, 0.6][severity - 1]! },
      })),
    ],
    at: [0, 0],
    fieldMm: 62,
    grows: greatest("reachMm"),
  },
  {
    id: "wire-stub",
    scenario: "poor-start-arc-strike",
    keeps: ["wire-stub"],
    changes: [
      bead([{ wanderMm: 0.3 }, { wanderMm: 0.3 }, { wanderMm: 0.3 }]),
      fault("wire-stub", [
        { xMm: -26, lengthMm: 5 },
        { xMm: -26, lengthMm: 9 },
        { xMm: -26, lengthMm: 15 },
      ]),
    ],
    at: [-24, 2],
    fieldMm: 34,
    grows: greatest("lengthMm"),
  },
  {
    id: "torn-surface",
    scenario: "butt-tool-marks",
    keeps: ["torn-surface"],
    changes: [
      fault("torn-surface", [
        { yMm: 15, lengthMm: 8, widthMm: 4, depthMm: 0.4 },
        { yMm: 15, lengthMm: 14, widthMm: 7, depthMm: 0.7 },
        { yMm: 15, lengthMm: 22, widthMm: 10, depthMm: 1.1 },
      ]),
    ],
    at: [26, 13],
    fieldMm: 40,
    grows: sum("areaMmSquared"),
  },
  {
    id: "grinding-mark",
    scenario: "butt-tool-marks",
    keeps: ["grinding-mark"],
    changes: [
      fault("grinding-mark", [
        { yMm: 16, lengthMm: 12, widthMm: 3, depthMm: 0.2 },
        { yMm: 16, lengthMm: 19, widthMm: 4.4, depthMm: 0.5 },
        { yMm: 16, lengthMm: 26, widthMm: 6.5, depthMm: 1 },
      ]),
    ],
    at: [-34, 15],
    fieldMm: 42,
    grows: sum("areaMmSquared"),
  },
  {
    id: "chipping-mark",
    scenario: "butt-tool-marks",
    keeps: ["chipping-marks"],
    changes: [
      fault("chipping-marks", [
        { count: 2, fromMm: 14, toMm: 24, lengthMm: 3, depthMm: 0.3 },
        { count: 5, fromMm: 8, toMm: 32, lengthMm: 4.2, depthMm: 0.5 },
        { count: 11, fromMm: 4, toMm: 38, lengthMm: 5, depthMm: 0.8 },
      ]),
    ],
    at: [20, -8],
    fieldMm: 40,
    grows: sum("lengthMm"),
  },
  {
    id: "underflushing",
    scenario: "butt-tool-marks",
    keeps: ["underflushing"],
    changes: [fault("underflushing", [{ depthMm: 0.35 }, { depthMm: 0.9 }, { depthMm: 1.7 }])],
    at: [-16, 0],
    fieldMm: 52,
    pose: { tiltDeg: 24 },
    grows: greatest("depthMm"),
  },
  {
    id: "burnback",
    scenario: "stringer-burnback",
    keeps: ["burnback"],
    changes: [
      fault("burnback", [
        { ballMm: 2, stubMm: 4 },
        { ballMm: 3, stubMm: 7.5 },
        { ballMm: 4.4, stubMm: 12 },
      ]),
    ],
    at: [25, 0],
    fieldMm: 36,
    grows: greatest("diameterMm"),
  },
];

const crack: readonly CloseUp[] = [
  {
    id: "crater-crack",
    scenario: "crater-crack",
    keeps: ["open-crater", "crater-crack"],
    changes: [
      fault("crater-crack", [
        { arms: 2, lengthMm: 1.8, widthMm: 0.1 },
        { arms: 3, lengthMm: 2.8, widthMm: 0.13 },
        { arms: 5, lengthMm: 4.2, widthMm: 0.18 },
      ]),
    ],
    at: [8, 0],
    fieldMm: 22,
    grows: sum("lengthMm"),
  },
  {
    id: "longitudinal-crack",
    scenario: "crack-along-across",
    keeps: ["longitudinal-crack"],
    changes: [
      fault("longitudinal-crack", [
        { fromMm: -4, toMm: 4, widthMm: 0.11 },
        { fromMm: -9, toMm: 8, widthMm: 0.15 },
        { fromMm: -20, toMm: 20, widthMm: 0.24 },
      ]),
    ],
    at: [0, 0],
    fieldMm: 28,
    grows: sum("lengthMm"),
  },
  {
    id: "transverse-crack",
    scenario: "crack-along-across",
    keeps: ["transverse-crack"],
    changes: [
      fault("transverse-crack", [
        { xMm: 0, widthMm: 0.11 },
        { xMm: 0, widthMm: 0.18 },
        { xMm: 0, widthMm: 0.32 },
      ]),
    ],
    at: [0, 0],
    fieldMm: 24,
    grows: greatest("widthMm"),
  },
  {
    id: "toe-crack",
    scenario: "tee-toe-crack-short",
    keeps: ["toe-crack"],
    changes: [
      fault("toe-crack", [
        { fromMm: -14, toMm: -6, widthMm: 0.16 },
        { fromMm: -20, toMm: -2, widthMm: 0.22 },
        { fromMm: -32, toMm: 12, widthMm: 0.32 },
      ]),
    ],
    at: [-10, -3],
    fieldMm: 28,
    grows: sum("lengthMm"),
  },
  {
    id: "radiating-crack",
    scenario: "hard-cracks",
    keeps: ["radiating-crack"],
    changes: [
      fault("radiating-crack", [
        { arms: 3, lengthMm: 2.4, widthMm: 0.12 },
        { arms: 4, lengthMm: 3.8, widthMm: 0.16 },
        { arms: 6, lengthMm: 5, widthMm: 0.22 },
      ]),
    ],
    at: [2, 0],
    fieldMm: 22,
    grows: sum("lengthMm"),
  },
  {
    id: "crack-group",
    scenario: "hard-cracks",
    keeps: ["crack-group"],
    changes: [
      fault("crack-group", [
        { count: 3, radiusMm: 2.2, lengthMm: 2, widthMm: 0.13 },
        { count: 5, radiusMm: 3.4, lengthMm: 2.6, widthMm: 0.16 },
        { count: 8, radiusMm: 4.4, lengthMm: 3, widthMm: 0.22 },
      ]),
    ],
    at: [20, 0],
    fieldMm: 22,
    grows: sum("crackCount"),
  },
  {
    id: "branching-crack",
    scenario: "hard-cracks",
    keeps: ["branching-crack"],
    changes: [
      fault("branching-crack", [
        { fromMm: -25, lengthMm: 9, branches: 1, widthMm: 0.13 },
        { fromMm: -29, lengthMm: 17, branches: 2, widthMm: 0.17 },
        { fromMm: -32, lengthMm: 24, branches: 4, widthMm: 0.24 },
      ]),
    ],
    at: [-20, 0],
    fieldMm: 26,
    grows: sum("lengthMm"),
  },
];

/** Every imperfection from near. */
export const closeUps: readonly CloseUp[] = [...gas, ...fusion, ...shape, ...slag, ...surface, ...crack];
