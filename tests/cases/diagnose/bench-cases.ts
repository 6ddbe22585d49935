import type { CauseId } from "@/lib/diagnose/cause-ids";

/** A bead as a welder would describe it, and what an instructor would name. Invented from general trade knowledge. */
export interface BenchCase {
  readonly name: string;
  readonly basis: "common practice, no source" | "from memory";
  readonly given: unknown;
  /** Any of these first is right. */
  readonly wanted: readonly CauseId[];
}

const practice = "common practice, no source" as const;
const memory = "from memory" as const;
const marks = (...ids: readonly string[]) => ids.map((imperfection) => ({ imperfection }));

export const benchCases: readonly BenchCase[] = [
  {
    name: "GMAW solid wire run on electrode negative, class not recorded, no mark",
    basis: practice,
    given: { setup: { process: "GMAW", polarity: "DCEN" } },
    wanted: ["polarity"],
  },
  {
    name: "FCAW-G on electrode negative, class not recorded, spatter and a ropey bead",
    basis: practice,
    given: { setup: { process: "FCAW-G", polarity: "DCEN" }, findings: marks("spatter", "convex-bead") },
    wanted: ["polarity"],
  },
  {
    name: "GTAW on electrode positive, no mark",
    basis: practice,
    given: { setup: { process: "GTAW", polarity: "DCEP" } },
    wanted: ["polarity"],
  },
  {
    name: "GMAW with the cylinder shut",
    basis: practice,
    given: { setup: { process: "GMAW", gas: "none" }, findings: marks("surface-porosity", "spatter") },
    wanted: ["gas-low"],
  },
  {
    name: "GTAW, flow meter reads nothing",
    basis: practice,
    given: { setup: { process: "GTAW", gas: "Ar", gasFlowLPerMin: 0 } },
    wanted: ["gas-low"],
  },
  {
    name: "GMAW outdoors in wind, pores on one side",
    basis: practice,
    given: {
      setup: { process: "GMAW", outdoors: true },
      findings: [{ imperfection: "surface-porosity", patterns: ["one-side"] }],
    },
    wanted: ["draft"],
  },
  {
    name: "E71T-11 outdoors with soot and spatter after a change from solid wire",
    basis: practice,
    given: {
      setup: { process: "FCAW-S", electrodeClass: "E71T-11", outdoors: true },
      findings: [{ imperfection: "surface-porosity", patterns: ["with-soot"] }, { imperfection: "spatter" }],
    },
    wanted: ["polarity"],
  },
  {
    name: "FCAW-G, flow far too high, pores",
    basis: practice,
    given: {
      setup: { process: "FCAW-G", electrodeClass: "E71T-1", electrodeDiameterMm: 1.2, gasFlowLPerMin: 45 },
      findings: marks("surface-porosity"),
    },
    wanted: ["gas-high"],
  },
  {
    name: "GMAW short arc with a tip 30 mm off the work: cold, narrow, pores",
    basis: practice,
    given: {
      setup: {
        process: "GMAW",
        transfer: "short-circuit",
        electrodeClass: "ER70S-6",
        electrodeDiameterMm: 0.9,
        ctwdMm: 30,
      },
      findings: marks("convex-bead", "surface-porosity"),
    },
    wanted: ["ctwd-long"],
  },
  {
    name: "E71T-1 with the tip too close: worm tracks",
    basis: memory,
    given: {
      setup: { process: "FCAW-G", electrodeClass: "E71T-1", electrodeDiameterMm: 1.2, ctwdMm: 10 },
      findings: marks("gas-mark"),
    },
    wanted: ["ctwd-short"],
  },
  {
    name: "E71T-11 with the tip at 8 mm: pores",
    basis: memory,
    given: {
      setup: { process: "FCAW-S", electrodeClass: "E71T-11", electrodeDiameterMm: 0.9, ctwdMm: 5 },
      findings: marks("surface-porosity"),
    },
    wanted: ["ctwd-short"],
  },
  {
    name: "E7018 from an open packet, pores along the whole bead",
    basis: practice,
    given: {
      setup: { process: "SMAW", electrodeClass: "E7018" },
      findings: [{ imperfection: "surface-porosity", stretch: "whole-length" }],
      answers: { "consumable-dry": "fault" },
    },
    wanted: ["damp-consumable"],
  },
  {
    name: "E7018, pores in the first centimetre only",
    basis: practice,
    given: {
      setup: { process: "SMAW", electrodeClass: "E7018" },
      findings: [{ imperfection: "surface-porosity", stretch: "start" }],
    },
    wanted: ["strike-tip", "arc-long"],
  },
  {
    name: "SMAW, long arc: wide flat bead, spatter, undercut",
    basis: practice,
    given: { setup: { process: "SMAW" }, findings: marks("flat-wide-bead", "spatter", "undercut") },
    wanted: ["arc-long"],
  },
  {
    name: "SMAW, rod sticks, ropey bead lies on the plate",
    basis: practice,
    given: {
      setup: { process: "SMAW" },
      findings: marks("convex-bead", "overlap"),
      answers: { "rod-sticks": "yes" },
    },
    wanted: ["wfs-low"],
  },
  {
    name: "SMAW 3.2 mm at 180 A: undercut, spatter, burn-through on 3 mm",
    basis: practice,
    given: {
      setup: {
        process: "SMAW",
        electrodeClass: "E6010",
        electrodeDiameterMm: 3.2,
        amps: 180,
        thicknessMm: 3,
      },
      findings: marks("undercut", "spatter", "burn-through"),
    },
    wanted: ["wfs-high"],
  },
  {
    name: "SMAW near the end of a long plate, arc pulled aside, spatter to one side",
    basis: practice,
    given: {
      setup: { process: "SMAW" },
      findings: marks("wandering", "spatter"),
      answers: { "arc-pulled": "fault" },
    },
    wanted: ["arc-blow"],
  },
  {
    name: "GMAW, wire wanders and the sound comes and goes",
    basis: practice,
    given: {
      setup: { process: "GMAW" },
      findings: marks("wandering", "uneven-width"),
      answers: { "sound-changes": "yes" },
    },
    wanted: ["tip-feed"],
  },
  {
    name: "FCAW-S, drive rolls slip: width comes and goes",
    basis: practice,
    given: {
      setup: { process: "FCAW-S" },
      findings: marks("uneven-width"),
      answers: { "sound-changes": "yes", "travel-steady": "good" },
    },
    wanted: ["tip-feed"],
  },
  {
    name: "GTAW, width waves with even ripples of the hand",
    basis: practice,
    given: {
      setup: { process: "GTAW" },
      findings: [{ imperfection: "uneven-width", patterns: ["periodic"] }],
    },
    wanted: ["travel-uneven"],
  },
  {
    name: "GMAW 2F, upper toe washed out, legs uneven, gun leaned to the upright",
    basis: practice,
    given: {
      setup: { process: "GMAW", joint: "tee", position: "horizontal", workAngleDeg: 70 },
      findings: [{ imperfection: "undercut", place: "upper-toe" }, { imperfection: "uneven-legs" }],
    },
    wanted: ["work-angle", "placement"],
  },
  {
    name: "GMAW spray, 34 V: wide, flat, undercut both toes",
    basis: practice,
    given: {
      setup: {
        process: "GMAW",
        transfer: "spray",
        electrodeClass: "ER70S-6",
        electrodeDiameterMm: 1.2,
        volts: 34,
      },
      findings: [{ imperfection: "undercut", place: "both-toes" }, { imperfection: "flat-wide-bead" }],
    },
    wanted: ["volt-high"],
  },
  {
    name: "GMAW short arc at 14 V and a high feed: stubs, ropey, spatter",
    basis: practice,
    given: {
      setup: {
        process: "GMAW",
        transfer: "short-circuit",
        electrodeClass: "ER70S-6",
        electrodeDiameterMm: 0.9,
        volts: 14,
        wireFeedMPerMin: 7.5,
      },
      findings: marks("convex-bead", "spatter"),
      answers: { stubbing: "yes" },
    },
    wanted: ["volt-low"],
  },
  {
    name: "GMAW spray recorded with carbon dioxide: spatter",
    basis: practice,
    given: { setup: { process: "GMAW", transfer: "spray", gas: "CO2" }, findings: marks("spatter") },
    wanted: ["gas-wrong"],
  },
  {
    name: "FCAW-G groove, slag line between passes",
    basis: practice,
    given: {
      setup: { process: "FCAW-G", joint: "groove-backed", passCount: 3 },
      findings: marks("trapped-slag"),
    },
    wanted: ["slag-left"],
  },
  {
    name: "FCAW-S pushed: slag in the bead",
    basis: practice,
    given: {
      setup: { process: "FCAW-S", electrodeClass: "E71T-11", travelDirection: "push" },
      findings: marks("trapped-slag"),
    },
    wanted: ["push-on-slag"],
  },
  {
    name: "E71T-1 vertical down: shallow, slag runs ahead",
    basis: practice,
    given: {
      setup: { process: "FCAW-G", electrodeClass: "E71T-1", position: "vertical", progression: "down" },
      findings: marks("trapped-slag", "concave-face"),
      answers: { "pool-ran-ahead": "yes" },
    },
    wanted: ["downhill"],
  },
  {
    name: "Galvanised lap by GMAW, pores",
    basis: practice,
    given: {
      setup: { process: "GMAW", joint: "lap", surface: "galvanised" },
      findings: marks("surface-porosity", "spatter"),
    },
    wanted: ["coating"],
  },
  {
    name: "Primed T-joint by FCAW-G, line of elongated pores",
    basis: practice,
    given: {
      setup: { process: "FCAW-G", joint: "tee", surface: "primed" },
      findings: [{ imperfection: "wormhole", patterns: ["in-line"] }],
    },
    wanted: ["coating"],
  },
  {
    name: "Rusty plate by GMAW, pores in patches",
    basis: practice,
    given: {
      setup: { process: "GMAW", surface: "heavy-rust" },
      findings: [{ imperfection: "surface-porosity", patterns: ["clustered"] }],
    },
    wanted: ["contam"],
  },
  {
    name: "Wet cold plate by FCAW-G, pores at the start",
    basis: practice,
    given: {
      setup: { process: "FCAW-G", surface: "wet" },
      findings: [{ imperfection: "surface-porosity", stretch: "start" }],
    },
    wanted: ["moisture-plate"],
  },
  {
    name: "Open root with a 6 mm gap: burned through",
    basis: practice,
    given: {
      setup: { process: "SMAW", joint: "butt-open", fitUpGapMm: 6 },
      findings: marks("burn-through", "excess-penetration"),
    },
    wanted: ["gap"],
  },
  {
    name: "GTAW stainless tube, sugared root",
    basis: practice,
    given: {
      setup: { process: "GTAW", baseMetal: "stainless", joint: "butt-open" },
      findings: [{ imperfection: "temper-colour", place: "root" }],
    },
    wanted: ["no-purge"],
  },
  {
    name: "GTAW stainless, many passes, colour along the whole length",
    basis: practice,
    given: {
      setup: { process: "GTAW", baseMetal: "stainless", passCount: 5, gas: "Ar", gasFlowLPerMin: 10 },
      findings: [{ imperfection: "temper-colour", stretch: "whole-length" }],
    },
    wanted: ["heat-interpass"],
  },
  {
    name: "FCAW-G, star crack in the crater",
    basis: practice,
    given: {
      setup: { process: "FCAW-G" },
      findings: [{ imperfection: "crater-crack", stretch: "crater" }],
    },
    wanted: ["crater-unfilled"],
  },
  {
    name: "FCAW-S fillet 12 mm in one pass in 2F: sagging, upper toe undercut",
    basis: practice,
    given: {
      setup: { process: "FCAW-S", joint: "tee", position: "horizontal" },
      findings: [{ imperfection: "undercut", place: "upper-toe" }, { imperfection: "oversized" }],
      bead: { legMm: 12 },
    },
    wanted: ["pass-too-big"],
  },
  {
    name: "GMAW, thin stringy bead at 900 mm/min, undersized",
    basis: practice,
    given: {
      setup: { process: "GMAW", travelSpeedMmPerMin: 1000 },
      findings: marks("undersized", "convex-bead"),
    },
    wanted: ["travel-fast"],
  },
  {
    name: "FCAW-G, oversized, rolled over lower toe",
    basis: practice,
    given: {
      setup: { process: "FCAW-G", joint: "tee", position: "horizontal" },
      findings: [{ imperfection: "oversized" }, { imperfection: "overlap", place: "lower-toe" }],
    },
    wanted: ["travel-slow"],
  },
  {
    name: "SMAW weave uphill, toes notched where it turns",
    basis: practice,
    given: {
      setup: { process: "SMAW", position: "vertical", progression: "up" },
      findings: [{ imperfection: "undercut", patterns: ["weave-turns"] }],
    },
    wanted: ["weave"],
  },
  {
    name: "120 V machine on a long cord, 6 mm plate, cold bead",
    basis: practice,
    given: {
      setup: { process: "FCAW-S", inputPower: "120V", thicknessMm: 6 },
      findings: marks("overlap", "convex-bead"),
      answers: { "cold-arc": "yes" },
    },
    wanted: ["input-power", "base-cold-thick"],
  },
  {
    name: "GMAW, arc dies and flares, clamp on rust",
    basis: practice,
    given: {
      setup: { process: "GMAW" },
      findings: marks("spatter", "uneven-width"),
      answers: { "sound-changes": "yes", "work-clamp": "fault" },
    },
    wanted: ["work-lead"],
  },
  {
    name: "E71T-GS in three layers, crack along the bead",
    basis: practice,
    given: {
      setup: { process: "FCAW-S", electrodeClass: "E71T-GS", passCount: 3 },
      findings: marks("longitudinal-crack"),
    },
    wanted: ["single-pass-wire"],
  },
  {
    name: "E308LT0-3 on electrode negative, no mark",
    basis: practice,
    given: { setup: { process: "FCAW-S", electrodeClass: "E308LT0-3", polarity: "DCEN" } },
    wanted: ["polarity"],
  },
  {
    name: "2 mm sheet by FCAW-S: holes, nothing else known",
    basis: practice,
    given: {
      setup: { process: "FCAW-S", thicknessMm: 1.2 },
      findings: marks("burn-through"),
    },
    wanted: ["wfs-high", "thin-base", "travel-slow"],
  },
];
