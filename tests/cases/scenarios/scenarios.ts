import { byCommonPractice } from "./scenario";
import { benchT11, benchT1M, benchCored308, benchShortArc, bench7018, benchTorch } from "./set-ups";

/**
 * Beads as welders meet them, and what an experienced welder would say of each. The expectations stood before any
 * diagnosis was run on them; they may be looked at while the tables are worked on.
 */
export const scenarios = byCommonPractice([
  // Self-shielded wire
  {
    id: "F02",
    title: "Gasless wire on the plus lug, and nothing else known",
    given: {
      setup: {
        process: "FCAW-S",
        electrodeClass: "E71T-11",
        electrodeDiameterMm: 0.9,
        polarity: "DCEP",
        gas: "none",
        baseMetal: "carbon-steel",
      },
      findings: [{ imperfection: "spatter" }, { imperfection: "undercut" }],
    },
    expect: { top: ["polarity"], change: { causes: ["polarity"], toText: "DCEN" } },
  },
  {
    id: "F03",
    title: "Notched upper toe with the gun tipped to 60 degrees",
    given: {
      setup: { ...benchT11, workAngleDeg: 60 },
      findings: [{ imperfection: "undercut", place: "upper-toe" }],
    },
    expect: { top: ["work-angle"], change: { causes: ["work-angle"], lo: 40, hi: 50 } },
  },
  {
    id: "F04",
    title: "Notched upper toe and a long lower leg; nobody read the angle",
    given: {
      setup: { ...benchT11, workAngleDeg: null },
      findings: [{ imperfection: "undercut", place: "upper-toe" }, { imperfection: "uneven-legs" }],
    },
    expect: { top: ["work-angle", "placement"], change: { causes: ["work-angle", "placement"] } },
  },
  {
    id: "F06",
    title: "Ropey bead: volts well under the feed",
    given: { setup: { ...benchT11, volts: 14 }, findings: [{ imperfection: "convex-bead" }] },
    expect: { top: ["volt-low"], change: { causes: ["volt-low"], lo: 15, hi: 17.5 } },
  },
  {
    id: "F12",
    title: "Thin lap welded cold, piled up and rolled over",
    given: {
      setup: { ...benchT11, wireFeedMPerMin: 2.286, volts: 14.5, thicknessMm: 3, joint: "lap" },
      findings: [{ imperfection: "convex-bead" }, { imperfection: "overlap", place: "both-toes" }],
    },
    expect: {
      top: ["wfs-low", "volt-low"],
      change: { causes: ["wfs-low", "volt-low"] },
      avoid: ["travel-slow"],
    },
  },
  {
    id: "F15",
    title: "Flat settings taken up the wall: belly and notched toes",
    given: {
      setup: { ...benchT11, position: "vertical", progression: "up" },
      findings: [{ imperfection: "convex-bead" }, { imperfection: "undercut", place: "both-toes" }],
    },
    expect: {
      top: ["wfs-high", "weave"],
      change: { causes: ["wfs-high", "weave"] },
      avoid: ["volt-low", "wfs-low"],
    },
  },
  {
    id: "F16",
    title: "Small lap downhill with a wire made for it; slag overtook the arc",
    given: {
      setup: {
        ...benchT11,
        wireFeedMPerMin: 2.794,
        volts: 15.5,
        thicknessMm: 2,
        joint: "lap",
        position: "vertical",
        progression: "down",
      },
      findings: [{ imperfection: "trapped-slag", place: "face" }],
      answers: { "pool-ran-ahead": "yes" },
    },
    expect: {
      top: ["travel-slow", "pool-ahead"],
      change: { causes: ["travel-slow", "pool-ahead"] },
      avoid: ["downhill"],
    },
  },
  {
    id: "F17",
    title: "Slag-bearing wire pushed: slag in the face",
    given: {
      setup: { ...benchT11, travelDirection: "push" },
      findings: [{ imperfection: "trapped-slag", place: "face" }],
    },
    expect: { top: ["push-on-slag"], change: { causes: ["push-on-slag"], toText: "drag" } },
  },
  {
    id: "F18",
    title: "Gun laid far back: balls along the plate, high bead",
    given: {
      setup: { ...benchT11, travelAngleDeg: 50 },
      findings: [{ imperfection: "spatter" }, { imperfection: "convex-bead" }],
    },
    expect: { top: ["drag-excess"], change: { causes: ["drag-excess"], lo: 5, hi: 25 } },
  },
  {
    id: "F19",
    title: "Pad of stringers with slag in the valleys",
    given: {
      setup: { ...benchT11, joint: "stringer-pad", position: "flat", workAngleDeg: 90, passCount: 1 },
      findings: [{ imperfection: "trapped-slag", place: "left-toe", stretch: "whole-length" }],
    },
    expect: {
      top: ["slag-left", "placement", "bead-shape", "volt-low"],
      change: { causes: ["slag-left", "placement", "volt-low", "bead-shape"] },
    },
  },
  {
    id: "F21",
    title: "Dished end of the bead",
    given: { setup: benchT11, findings: [{ imperfection: "open-crater", stretch: "crater" }] },
    expect: { top: ["crater-unfilled"], change: { causes: ["crater-unfilled"] } },
  },
  {
    id: "F26",
    title: "Long thin cord on house current: cold, high bead",
    given: {
      setup: { ...benchT11, wireFeedMPerMin: 3.81, volts: 15.5, inputPower: "120V", thicknessMm: 3 },
      findings: [{ imperfection: "convex-bead" }],
      answers: { supply: "fault", "cold-arc": "yes" },
    },
    expect: { top: ["input-power"], change: { causes: ["input-power"] } },
  },
  {
    id: "F28",
    title: "Pores on galvanised sheet",
    given: {
      setup: {
        ...benchT11,
        wireFeedMPerMin: 3.81,
        volts: 15.5,
        surface: "galvanised",
        thicknessMm: 3,
        joint: "lap",
      },
      findings: [{ imperfection: "surface-porosity" }],
    },
    expect: { top: ["coating"], change: { causes: ["coating"] }, cautions: ["zinc"] },
  },
  {
    id: "F29",
    title: "Worm holes in line on a primed T",
    given: {
      setup: { ...benchT11, surface: "primed" },
      findings: [{ imperfection: "wormhole", patterns: ["in-line"] }],
    },
    expect: { top: ["coating"], change: { causes: ["coating"] }, cautions: ["zinc"] },
  },
  {
    id: "F30",
    title: "Pores on a plate the rain got at",
    given: { setup: { ...benchT11, surface: "wet" }, findings: [{ imperfection: "surface-porosity" }] },
    expect: { top: ["moisture-plate"], change: { causes: ["moisture-plate"] }, cautions: ["wet|shock"] },
  },
  {
    id: "F31",
    title: "A patch of pores on oil and paint",
    given: {
      setup: { ...benchT11, surface: "oil-or-paint" },
      findings: [{ imperfection: "surface-porosity", patterns: ["clustered"] }],
    },
    expect: { top: ["contam"], change: { causes: ["contam"] } },
  },
  {
    id: "F33",
    title: "Volts far under the feed: the wire stubs when it starts",
    given: {
      setup: { ...benchT11, volts: 13.5 },
      findings: [{ imperfection: "poor-start", stretch: "start" }],
      answers: { stubbing: "yes" },
    },
    expect: { top: ["volt-low"], change: { causes: ["volt-low"], lo: 14.5, hi: 17 } },
  },
  {
    id: "F34",
    title: "Everything in order and nothing marked",
    given: { setup: benchT11, findings: [] },
    expect: { top: null, quiet: true },
  },
  {
    id: "F36",
    title: "Flat fillet came out at 4.2 mm where 6 was asked",
    given: {
      setup: { ...benchT11, position: "flat", targetLegMm: 6 },
      findings: [{ imperfection: "undersized" }],
      bead: { widthMm: null, legMm: 4.2, lengthMm: 150 },
    },
    expect: { top: ["travel-fast"], change: { causes: ["travel-fast"], lo: 110, hi: 200 } },
  },
  {
    id: "F38",
    title: "Hollow fillet: volts over the feed",
    given: { setup: { ...benchT11, volts: 19 }, findings: [{ imperfection: "concave-face" }] },
    expect: { top: ["volt-high"], change: { causes: ["volt-high"], lo: 16, hi: 18.5 } },
  },
  {
    id: "F39",
    title: "Small wire on thick plate: cold toes",
    given: {
      setup: { ...benchT11, wireFeedMPerMin: 3.81, volts: 15.5, thicknessMm: 12 },
      findings: [{ imperfection: "lack-of-fusion", place: "both-toes" }],
    },
    expect: {
      top: ["base-cold-thick", "wfs-low"],
      inspector: true,
      change: { causes: ["base-cold-thick", "wfs-low"] },
      cautions: ["inspector-first:lack-of-fusion"],
    },
  },
  {
    id: "F40",
    title: "Crawling along a lap: metal rolled over the lower plate",
    given: {
      setup: { ...benchT11, joint: "lap", travelSpeedMmPerMin: 100 },
      findings: [{ imperfection: "overlap", place: "lower-toe" }],
    },
    expect: { top: ["travel-slow"], change: { causes: ["travel-slow"], lo: 110, hi: 250 } },
  },
  {
    id: "F41",
    title: "Rolled over at both toes; only wire and size known",
    given: {
      setup: { process: "FCAW-S", electrodeClass: "E71T-11", electrodeDiameterMm: 0.9 },
      findings: [{ imperfection: "overlap", place: "both-toes" }],
    },
    expect: { top: ["wfs-low", "volt-low"], change: { causes: ["wfs-low", "volt-low"] } },
  },
  {
    id: "F42",
    title: "Long flaring arc on a bigger gasless wire: pores from end to end",
    given: {
      setup: {
        process: "FCAW-S",
        electrodeClass: "E71T-8",
        electrodeDiameterMm: 1.6,
        polarity: "DCEN",
        gas: "none",
        wireFeedMPerMin: 2.286,
        volts: 26,
        ctwdMm: 20,
        position: "flat",
        joint: "tee",
        thicknessMm: 12,
      },
      findings: [{ imperfection: "surface-porosity", stretch: "whole-length" }],
    },
    expect: { top: ["volt-high"], change: { causes: ["volt-high"], lo: 18, hi: 24 } },
  },
  {
    id: "F43",
    title: "Single-pass wire in three layers: crack along the bead",
    given: {
      setup: {
        process: "FCAW-S",
        electrodeClass: "E71T-GS",
        electrodeDiameterMm: 0.9,
        polarity: "DCEN",
        passCount: 3,
        thicknessMm: 6,
        joint: "tee",
      },
      findings: [{ imperfection: "longitudinal-crack" }],
    },
    expect: {
      top: ["single-pass-wire"],
      inspector: true,
      change: { causes: ["single-pass-wire"] },
      flags: ["single-pass-wire-in-passes"],
    },
  },
  {
    id: "F45",
    title: "Ropey, and no more is known",
    given: { setup: { process: "FCAW-S" }, findings: [{ imperfection: "convex-bead" }] },
    expect: { top: ["volt-low", "wfs-low", "travel-fast", "ctwd-long"], change: null },
  },
  {
    id: "F46",
    title: "Slag in the face, and no more is known",
    given: { setup: { process: "FCAW-S" }, findings: [{ imperfection: "trapped-slag", place: "face" }] },
    expect: { top: ["travel-slow", "push-on-slag", "pool-ahead"], change: null },
  },
  {
    id: "F47",
    title: "A hole, and no more is known",
    given: { setup: { process: "FCAW-S" }, findings: [{ imperfection: "burn-through" }] },
    expect: { top: ["wfs-high", "travel-slow"], change: null },
  },
  {
    id: "F48",
    title: "Notched toe, and no more is known",
    given: { setup: { process: "FCAW-S" }, findings: [{ imperfection: "undercut" }] },
    expect: { top: ["travel-fast", "volt-high", "wfs-high", "work-angle"], change: null },
  },
  {
    id: "F49",
    title: "Overhead with more wire than flat would take: the bead hangs",
    given: {
      setup: { ...benchT11, wireFeedMPerMin: 8.382, volts: 18.5, position: "overhead" },
      findings: [{ imperfection: "convex-bead" }, { imperfection: "overlap" }],
    },
    expect: {
      top: ["wfs-high", "travel-slow", "pass-too-big"],
      change: { causes: ["wfs-high", "travel-slow", "pass-too-big"] },
      avoid: ["volt-low", "wfs-low"],
    },
  },
  {
    id: "F50",
    title: "A breeze from one side, all else in order: pores on that side",
    given: {
      setup: { ...benchT11, outdoors: true },
      findings: [{ imperfection: "surface-porosity", patterns: ["one-side"] }],
    },
    expect: { top: ["draft"], change: { causes: ["draft", "drag-excess"] } },
  },
  // Gas-shielded flux-cored wire
  {
    id: "G01",
    title: "Gas-shielded wire run with no gas",
    given: {
      setup: { ...benchT1M, electrodeClass: "E71T-1C", gas: "none", gasFlowLPerMin: null },
      findings: [{ imperfection: "surface-porosity", stretch: "whole-length" }],
    },
    expect: { top: ["gas-low"], change: { causes: ["gas-low"] }, flags: ["gas-missing"] },
  },
  {
    id: "G04",
    title: "Gas wide open: pores from end to end",
    given: {
      setup: { ...benchT1M, gasFlowLPerMin: 60 },
      findings: [{ imperfection: "surface-porosity", stretch: "whole-length" }],
    },
    expect: { top: ["gas-high"], change: { causes: ["gas-high"], lo: 14, hi: 25 } },
  },
  {
    id: "G05",
    title: "Nozzle packed with balls: pores",
    given: {
      setup: benchT1M,
      findings: [{ imperfection: "surface-porosity" }],
      answers: { "nozzle-look": "fault" },
    },
    expect: { top: ["nozzle-fouled"], change: { causes: ["nozzle-fouled"] } },
  },
  {
    id: "G07",
    title: "Gun held close: worm tracks from end to end",
    given: {
      setup: { ...benchT1M, ctwdMm: 10 },
      findings: [{ imperfection: "gas-mark", stretch: "whole-length" }],
    },
    expect: { top: ["ctwd-short"], change: { causes: ["ctwd-short"], lo: 14, hi: 22 } },
  },
  {
    id: "G08",
    title: "Gas-shielded wire, volts under the feed: ropey",
    given: { setup: { ...benchT1M, volts: 22 }, findings: [{ imperfection: "convex-bead" }] },
    expect: { top: ["volt-low"], change: { causes: ["volt-low"], lo: 23, hi: 26.5 } },
  },
  {
    id: "G11",
    title: "Flat-position wire used overhead",
    given: {
      setup: { ...benchT1M, electrodeClass: "E70T-1M", position: "overhead" },
      findings: [{ imperfection: "convex-bead" }],
    },
    expect: { top: null, flags: ["position-against-class"] },
  },
  {
    id: "G12",
    title: "Third run over slag at both toes, not cleaned",
    given: {
      setup: {
        ...benchT1M,
        thicknessMm: 15,
        joint: "groove-backed",
        position: "flat",
        workAngleDeg: 90,
        passCount: 3,
      },
      findings: [{ imperfection: "trapped-slag", place: "both-toes" }],
      answers: { "slag-cleaned": "fault" },
    },
    expect: { top: ["slag-left"], change: { causes: ["slag-left"] } },
  },
  {
    id: "G13",
    title: "Wide open root: metal hangs through",
    given: {
      setup: {
        ...benchT1M,
        thicknessMm: 12,
        joint: "groove-open",
        position: "flat",
        workAngleDeg: 90,
        fitUpGapMm: 7,
      },
      findings: [{ imperfection: "excess-penetration" }],
    },
    expect: { top: ["gap"], change: { causes: ["gap"], lo: 0, hi: 4 } },
  },
  {
    id: "G14",
    title: "Open root run cold: root edges still there",
    given: {
      setup: {
        ...benchT1M,
        wireFeedMPerMin: 4.064,
        volts: 22,
        joint: "groove-open",
        position: "flat",
        workAngleDeg: 90,
        fitUpGapMm: 2.5,
      },
      findings: [{ imperfection: "incomplete-penetration", place: "root" }],
    },
    expect: { top: ["wfs-low"], inspector: true, change: { causes: ["wfs-low"] } },
  },
  {
    id: "G17",
    title: "Gas-shielded wire on the minus lug: balls and pores",
    given: {
      setup: { ...benchT1M, polarity: "DCEN" },
      findings: [{ imperfection: "spatter" }, { imperfection: "surface-porosity" }],
    },
    expect: { top: ["polarity"], change: { causes: ["polarity"], toText: "DCEP" } },
  },
  {
    id: "G20",
    title: "Up the wall at flat feed and hot: the bead hangs over",
    given: {
      setup: { ...benchT1M, volts: 27.5, position: "vertical", progression: "up" },
      findings: [{ imperfection: "convex-bead" }, { imperfection: "overlap" }],
    },
    expect: {
      top: ["wfs-high", "volt-high"],
      change: { causes: ["wfs-high", "volt-high"] },
      avoid: ["volt-low", "wfs-low"],
    },
  },
  // Solid wire
  {
    id: "M01",
    title: "Short arc on thick plate, run cold: toes not tied in",
    given: {
      setup: { ...benchShortArc, wireFeedMPerMin: 4.572, volts: 17, thicknessMm: 10 },
      findings: [{ imperfection: "lack-of-fusion", place: "both-toes" }, { imperfection: "convex-bead" }],
    },
    expect: {
      top: ["wfs-low", "base-cold-thick"],
      inspector: true,
      change: { causes: ["wfs-low", "base-cold-thick"] },
    },
  },
  {
    id: "M02",
    title: "Spray set, but the gas is CO2: coarse balls",
    given: {
      setup: {
        ...benchShortArc,
        transfer: "spray",
        electrodeDiameterMm: 1.2,
        gas: "CO2",
        gasFlowLPerMin: 18,
        wireFeedMPerMin: 10.16,
        volts: 28,
        ctwdMm: 18,
        thicknessMm: 10,
        inputPower: null,
      },
      findings: [{ imperfection: "spatter", patterns: ["coarse"] }],
    },
    expect: { top: ["gas-wrong"], change: { causes: ["gas-wrong"] }, flags: ["gas-cannot-spray"] },
  },
  {
    id: "M03",
    title: "Hardly any gas: pores from end to end",
    given: {
      setup: { ...benchShortArc, gasFlowLPerMin: 4 },
      findings: [{ imperfection: "surface-porosity", stretch: "whole-length" }],
    },
    expect: { top: ["gas-low"], change: { causes: ["gas-low"], lo: 10, hi: 18 } },
  },
  {
    id: "M04",
    title: "Volts far under the feed: stubbing, big balls, high bead",
    given: {
      setup: { ...benchShortArc, wireFeedMPerMin: 7.62, volts: 15 },
      findings: [{ imperfection: "convex-bead" }, { imperfection: "spatter", patterns: ["coarse"] }],
      answers: { stubbing: "yes" },
    },
    expect: { top: ["volt-low"], change: { causes: ["volt-low"], lo: 16, hi: 20 } },
  },
  {
    id: "M05",
    title: "Volts far over the feed: flat, notched toes, balls",
    given: {
      setup: { ...benchShortArc, volts: 24 },
      findings: [
        { imperfection: "flat-wide-bead" },
        { imperfection: "undercut", place: "both-toes" },
        { imperfection: "spatter" },
      ],
    },
    expect: { top: ["volt-high"], change: { causes: ["volt-high"], lo: 17.5, hi: 22 } },
  },
  {
    id: "M06",
    title: "Solid wire left on the minus lug after a gasless job",
    given: {
      setup: { ...benchShortArc, polarity: "DCEN" },
      findings: [{ imperfection: "spatter" }, { imperfection: "convex-bead" }],
    },
    expect: { top: ["polarity"], change: { causes: ["polarity"], toText: "DCEP" } },
  },
  {
    id: "M07",
    title: "Thin sheet with too much wire: a hole",
    given: {
      setup: { ...benchShortArc, wireFeedMPerMin: 5.08, volts: 18, thicknessMm: 0.8, joint: "lap" },
      findings: [{ imperfection: "burn-through" }],
    },
    expect: {
      top: ["wfs-high", "thin-base", "travel-slow"],
      change: { causes: ["wfs-high", "travel-slow", "thin-base"] },
    },
  },
  {
    id: "M11",
    title: "Solid wire on a galvanised lap: pores and balls",
    given: {
      setup: { ...benchShortArc, thicknessMm: 2, joint: "lap", surface: "galvanised" },
      findings: [{ imperfection: "surface-porosity" }, { imperfection: "spatter" }],
    },
    expect: { top: ["coating"], change: { causes: ["coating"] }, cautions: ["zinc"] },
  },
  {
    id: "M14",
    title: "A pit at the end: the gun was pulled away",
    given: { setup: benchShortArc, findings: [{ imperfection: "crater-pipe", stretch: "crater" }] },
    expect: { top: ["crater-unfilled"], change: { causes: ["crater-unfilled"] } },
  },
  // Covered rods
  {
    id: "E01",
    title: "Low-hydrogen rods left in an open packet: pores from end to end",
    given: {
      setup: bench7018,
      findings: [{ imperfection: "surface-porosity", stretch: "whole-length" }],
      answers: { "consumable-dry": "fault" },
    },
    expect: { top: ["damp-consumable"], change: { causes: ["damp-consumable"] } },
  },
  {
    id: "E02",
    title: "Low-hydrogen rod: pores where it was struck and nowhere else",
    given: { setup: bench7018, findings: [{ imperfection: "surface-porosity", stretch: "start" }] },
    expect: { top: ["strike-tip"], change: { causes: ["strike-tip"] } },
  },
  {
    id: "E04",
    title: "Low-hydrogen rod with too few amps: it sticks and piles up",
    given: {
      setup: { ...bench7018, amps: 75 },
      findings: [{ imperfection: "convex-bead" }],
      answers: { "rod-sticks": "yes" },
    },
    expect: { top: ["wfs-low"], change: { causes: ["wfs-low"], lo: 95, hi: 140 } },
  },
  {
    id: "E05",
    title: "Rod held far off: balls, notched toes, pores",
    given: {
      setup: { ...bench7018, amps: 120 },
      findings: [
        { imperfection: "spatter" },
        { imperfection: "undercut" },
        { imperfection: "surface-porosity" },
      ],
      answers: { "arc-length": "long" },
    },
    expect: { top: ["arc-long"], change: { causes: ["arc-long"], lo: 1.5, hi: 4 } },
  },
  {
    id: "E06",
    title: "Low-hydrogen rod taken down the wall: slag in the face",
    given: {
      setup: { ...bench7018, position: "vertical", progression: "down", amps: 115 },
      findings: [{ imperfection: "trapped-slag", place: "face" }],
    },
    expect: { top: ["downhill"], change: { causes: ["downhill"], toText: "up" } },
  },
  {
    id: "E07",
    title: "Third run over slag that nobody chipped",
    given: {
      setup: { ...bench7018, joint: "groove-backed", position: "flat", passCount: 3, amps: 125 },
      findings: [{ imperfection: "trapped-slag", place: "left-toe" }],
      answers: { "slag-cleaned": "fault" },
    },
    expect: { top: ["slag-left"], change: { causes: ["slag-left"] } },
  },
  {
    id: "E10",
    title: "A stray burn on the plate next to the weld",
    given: {
      setup: { ...bench7018, amps: 120 },
      findings: [{ imperfection: "arc-strike", place: "beside" }],
    },
    expect: { top: ["strike-outside"], inspector: true, change: { causes: ["strike-outside"] } },
  },
  // Tungsten torch
  {
    id: "T01",
    title: "Crusted back of a stainless root",
    given: {
      setup: benchTorch,
      findings: [{ imperfection: "temper-colour", place: "root", patterns: ["with-dull-grey-face"] }],
    },
    expect: { top: ["no-purge"], change: { causes: ["no-purge"] } },
  },
  {
    id: "T02",
    title: "Torch on the plus lug",
    given: {
      setup: { ...benchTorch, polarity: "DCEP" },
      findings: [{ imperfection: "surface-porosity" }, { imperfection: "flat-wide-bead" }],
    },
    expect: { top: ["polarity"], change: { causes: ["polarity"], toText: "DCEN" } },
  },
  {
    id: "T03",
    title: "Welding mix on the tungsten torch",
    given: {
      setup: { ...benchTorch, gas: "75Ar-25CO2" },
      findings: [{ imperfection: "surface-porosity" }, { imperfection: "temper-colour" }],
    },
    expect: {
      top: ["gas-wrong"],
      change: { causes: ["gas-wrong"], toText: "Ar" },
      flags: ["gas-reactive-on-tungsten"],
    },
  },
  {
    id: "T04",
    title: "Torch held far off: wide bead, pores",
    given: {
      setup: benchTorch,
      findings: [{ imperfection: "flat-wide-bead" }, { imperfection: "surface-porosity" }],
      answers: { "arc-length": "long" },
    },
    expect: { top: ["arc-long"], change: { causes: ["arc-long"] } },
  },
  {
    id: "T05",
    title: "Grey face from end to end, hardly any argon",
    given: {
      setup: { ...benchTorch, gasFlowLPerMin: 3 },
      findings: [{ imperfection: "temper-colour", place: "face", patterns: ["with-dull-grey-face"] }],
    },
    expect: { top: ["gas-low"], change: { causes: ["gas-low"], lo: 6, hi: 12 } },
  },
  // Stainless flux-cored wire
  {
    id: "N02",
    title: "Fourth stainless run on a hot part: blue from end to end",
    given: {
      setup: { ...benchCored308, passCount: 4 },
      findings: [{ imperfection: "temper-colour", stretch: "whole-length", patterns: ["continuous"] }],
      answers: { interpass: "fault" },
    },
    expect: {
      top: ["heat-interpass"],
      change: { causes: ["heat-interpass"], lo: 100, hi: 175 },
      cautions: ["chromium"],
    },
  },
  {
    id: "N03",
    title: "Gasless stainless wire, volts far over: worm tracks",
    given: {
      setup: {
        process: "FCAW-S",
        electrodeClass: "E308LT0-3",
        electrodeDiameterMm: 0.9,
        polarity: "DCEP",
        gas: "none",
        baseMetal: "stainless",
        wireFeedMPerMin: 8.89,
        volts: 32,
        ctwdMm: 16,
        travelDirection: "drag",
        travelAngleDeg: 15,
        thicknessMm: 4,
        joint: "tee",
        position: "horizontal",
        surface: "bright",
        inputPower: "230V",
      },
      findings: [{ imperfection: "gas-mark", stretch: "whole-length" }],
    },
    expect: { top: ["volt-high"], change: { causes: ["volt-high"], lo: 25, hi: 29 } },
  },
  {
    id: "N04",
    title: "Stainless slag knocked off while it glowed",
    given: {
      setup: benchCored308,
      findings: [{ imperfection: "temper-colour" }],
      answers: { "slag-when": "fault" },
    },
    expect: { top: ["slag-hot"], change: { causes: ["slag-hot"] } },
  },
  // Records that contradict themselves
  {
    id: "C02",
    title: "Marked both ropey and flat and wide",
    given: {
      setup: benchT11,
      findings: [{ imperfection: "convex-bead" }, { imperfection: "flat-wide-bead" }],
    },
    expect: { top: null, flags: ["opposite-marks"] },
  },
  {
    id: "C03",
    title: "The current written down is far too small for the wire fed",
    given: {
      setup: { ...benchT11, wireFeedMPerMin: 10.16, volts: 19.5, amps: 60 },
      findings: [{ imperfection: "convex-bead" }],
    },
    expect: { top: null, flags: ["current-disagrees"] },
  },
  {
    id: "C05",
    title: "Travel written down does not follow from length and time",
    given: {
      setup: { ...benchT11, travelSpeedMmPerMin: 400, weldLengthMm: 150, arcTimeS: 90 },
      findings: [{ imperfection: "undersized" }],
    },
    expect: { top: null, flags: ["travel-speed-disagrees"] },
  },
  // Marks alone
  {
    id: "X01",
    title: "Notched at both toes, high and narrow",
    given: {
      setup: { process: "FCAW-S" },
      findings: [{ imperfection: "undercut", place: "both-toes" }, { imperfection: "convex-bead" }],
    },
    expect: { top: ["travel-fast"], change: { causes: ["travel-fast"] } },
  },
  {
    id: "X03",
    title: "Wide and flat, notched at both toes, pores",
    given: {
      setup: { process: "FCAW-S" },
      findings: [
        { imperfection: "flat-wide-bead" },
        { imperfection: "undercut", place: "both-toes" },
        { imperfection: "surface-porosity" },
      ],
    },
    expect: { top: ["volt-high"], change: { causes: ["volt-high"] } },
  },
  {
    id: "X04",
    title: "Wide and flat with a hole",
    given: {
      setup: { process: "FCAW-S" },
      findings: [{ imperfection: "flat-wide-bead" }, { imperfection: "burn-through" }],
    },
    expect: { top: ["travel-slow", "wfs-high"], change: { causes: ["travel-slow", "wfs-high"] } },
  },
]);
