import type { Outcome, TriedChange } from "@/lib/assess";
import type { RunSetup } from "@/lib/setup";
import { crackIds, type ImperfectionId } from "@/lib/trade";
import { DEMO_LIMITS_ID } from "./limits";
import type { DemoPerson } from "./people";

export interface DemoBead {
  /** Name of a picture in demo-images/set. */
  readonly picture: string;
  readonly title: string;
  readonly welder: DemoPerson;
  readonly daysAgo: number;
  /** What differs from the set-up the picture was made with: the fault as it would stand in the record. */
  readonly setup: Partial<RunSetup>;
  readonly criteriaId: string | null;
  /** Looked for; what is marked on the picture is found and does not stand here. */
  readonly lookedFor: readonly ImperfectionId[];
  readonly note: string;
  /** The bead it was run after, what was changed and what that did. */
  readonly after?: { readonly picture: string; readonly tried: TriedChange; readonly outcome: Outcome };
}

/**
 * Everything here is invented: Harrow Basin Training Bay, its people and their beads. It shows a first visitor the tool
 * full; it is evidence of nothing.
 */
export const demoShop = "Harrow Basin Training Bay";

/** Names the invented shop gives its usual set-ups; the values are the examples of lib/setup. */
export const demoSetups: readonly { readonly name: string; readonly id: string }[] = [
  { name: "Bay 2, sheet laps", id: "t11-lap-sheet" },
  { name: "Bay 4, T-joints on 230 V", id: "t11-tee-230" },
  { name: "Bay 5, groove over backing", id: "t1-groove-backed" },
];

/** What becomes of two of them: handed in and answered, handed in and waiting; and two on the job's welds. */
export const demoHandIns = { answered: "tee-undercut", waiting: "tee-porosity-soot" } as const;
export const demoJobWelds = { first: "groove-trapped-slag", second: "groove-underfill" } as const;

const C = "iso-5817-c";
const D11 = "aws-d1-1-static";

/** Looked over from end to end. */
const all = [
  ...crackIds,
  "crater-pipe",
  "surface-porosity",
  "wormhole",
  "undercut",
  "overlap",
  "lack-of-fusion",
  "burn-through",
  "arc-strike",
  "spatter",
] as const;

/** As above, and the shape of the bead, which the shop's own limits name. */
const overAll = [...all, "convex-bead", "uneven-width", "poor-start"] as const;

/** Oldest first: a bead is run after one that stands above it. */
export const demoBeads: readonly DemoBead[] = [
  // Maren's six weeks: one T-joint after the other, then stringers with another wire.
  {
    picture: "tee-hollow-undersized",
    title: "T-joint, hollow and small",
    welder: "Maren",
    daysAgo: 41,
    setup: {},
    criteriaId: C,
    lookedFor: all,
    note: "",
  },
  {
    picture: "tee-uneven-legs",
    title: "T-joint, hollow and small, try 2",
    welder: "Maren",
    daysAgo: 34,
    setup: {},
    after: {
      picture: "tee-hollow-undersized",
      tried: {
        causeId: "travel-fast",
        sentence: "Slow the travel.",
        step: "Travel speed from 560 mm/min down to 250 mm/min",
      },
      outcome: "better",
    },
    criteriaId: C,
    lookedFor: all,
    note: "Full now, but all of it on the bottom plate. Both legs still to be read with the fillet gauge.",
  },
  {
    picture: "tee-undercut",
    title: "T-joint, hollow and small, try 3",
    welder: "Maren",
    daysAgo: 27,
    setup: {},
    after: {
      picture: "tee-uneven-legs",
      tried: { causeId: "work-angle", sentence: "Halve the corner with the gun.", step: "Work angle to 45°" },
      outcome: "better",
    },
    criteriaId: C,
    lookedFor: all,
    note: "Depth still to be read with the undercut gauge.",
  },
  {
    picture: "tee-toes-slag",
    title: "T-joint, hollow and small, try 4",
    welder: "Maren",
    daysAgo: 20,
    setup: {},
    after: {
      picture: "tee-undercut",
      tried: {
        causeId: "volt-high",
        sentence: "Lower the volts.",
        step: "Voltage from 29 V down to 27 V",
      },
      outcome: "no-difference",
    },
    criteriaId: C,
    lookedFor: all,
    note: "",
  },
  {
    picture: "stringer-ropey",
    title: "Stringer gone ropey",
    welder: "Maren",
    daysAgo: 12,
    setup: { ctwdMm: 32, volts: 14 },
    criteriaId: DEMO_LIMITS_ID,
    lookedFor: overAll,
    note: "",
  },
  {
    picture: "stringer-pad-good",
    title: "Stringer gone ropey, try 2",
    welder: "Maren",
    daysAgo: 11,
    setup: { ctwdMm: 22 },
    after: {
      picture: "stringer-ropey",
      tried: {
        causeId: "ctwd-long",
        sentence: "Shorten the distance from tip to work.",
        step: "Tip to work from 32 mm down to 22 mm",
      },
      outcome: "cured",
    },
    criteriaId: DEMO_LIMITS_ID,
    lookedFor: overAll,
    note: "Even pitch now. Keep the aim at the toe of the last one.",
  },
  {
    picture: "restart-cluster",
    title: "Restart in the middle of the run",
    welder: "Maren",
    daysAgo: 4,
    setup: {},
    criteriaId: DEMO_LIMITS_ID,
    lookedFor: overAll,
    note: "Tip was full of spatter when it stopped.",
  },
  {
    picture: "lap-cold-lap",
    title: "Lap on 2 mm, lower toe rolled over",
    welder: "Idris",
    daysAgo: 37,
    setup: {},
    criteriaId: C,
    lookedFor: [...crackIds, "surface-porosity", "burn-through"],
    note: "",
  },
  {
    picture: "root-side",
    title: "Open root, seen from behind",
    welder: "Idris",
    daysAgo: 23,
    setup: {},
    criteriaId: C,
    lookedFor: [...crackIds, "burn-through"],
    note: "",
  },
  {
    picture: "groove-underfill",
    title: "Groove over backing, not filled",
    welder: "Idris",
    daysAgo: 9,
    setup: {},
    criteriaId: D11,
    lookedFor: all,
    note: "",
  },
  {
    picture: "stainless-lap-spatter",
    title: "Stainless lap, spatter everywhere",
    welder: "Idris",
    daysAgo: 2,
    setup: {},
    criteriaId: C,
    lookedFor: ["longitudinal-crack", "crater-crack", "overlap"],
    note: "",
  },
  {
    picture: "corner-linear-pores",
    title: "Outside corner, pores in a row",
    welder: "Sunniva",
    daysAgo: 36,
    setup: {},
    criteriaId: C,
    lookedFor: [...crackIds, "undercut", "overlap"],
    note: "",
  },
  {
    picture: "gas-marks-wormholes",
    title: "Worm tracks under the slag",
    welder: "Sunniva",
    daysAgo: 22,
    setup: {},
    criteriaId: null,
    lookedFor: [],
    note: "Spool had stood open since spring.",
  },
  {
    picture: "tee-porosity-soot",
    title: "Soot and pores after the wire change",
    welder: "Sunniva",
    daysAgo: 7,
    setup: { polarity: "DCEP" },
    criteriaId: C,
    lookedFor: ["longitudinal-crack", "crater-crack"],
    note: "Somebody had gas-shielded wire on before.",
  },
  {
    picture: "groove-trapped-slag",
    title: "Groove over backing, slag between runs",
    welder: "Sunniva",
    daysAgo: 5,
    setup: {},
    criteriaId: D11,
    lookedFor: crackIds,
    note: "",
  },
  {
    picture: "vertical-up-uneven",
    title: "First vertical up",
    welder: "Tobin",
    daysAgo: 33,
    setup: {},
    criteriaId: null,
    lookedFor: [],
    note: "",
  },
  {
    picture: "poor-start-arc-strike",
    title: "Struck beside the joint",
    welder: "Tobin",
    daysAgo: 26,
    setup: {},
    criteriaId: DEMO_LIMITS_ID,
    lookedFor: overAll,
    note: "",
  },
  {
    picture: "flat-wide-weave",
    title: "Weave gone wide",
    welder: "Tobin",
    daysAgo: 19,
    setup: {},
    criteriaId: DEMO_LIMITS_ID,
    lookedFor: overAll,
    note: "",
  },
  {
    picture: "stainless-temper-colour",
    title: "Stainless, too blue",
    welder: "Tobin",
    daysAgo: 13,
    setup: {},
    criteriaId: null,
    lookedFor: [],
    note: "",
  },
  {
    picture: "burn-through-sheet",
    title: "Blew through the sheet",
    welder: "Tobin",
    daysAgo: 6,
    setup: {},
    criteriaId: C,
    lookedFor: [],
    note: "",
  },
  {
    picture: "crack-along-across",
    title: "Cracked along and across",
    welder: "Tobin",
    daysAgo: 1,
    setup: {},
    criteriaId: C,
    lookedFor: ["surface-porosity", "undercut"],
    note: "Left as it is. Thick plate, cold from the yard.",
  },
  {
    picture: "crater-crack",
    title: "Star in the crater",
    welder: "Tobin",
    daysAgo: 0,
    setup: {},
    criteriaId: C,
    lookedFor: ["surface-porosity", "undercut"],
    note: "Left as it is until it has been looked at.",
  },
];
