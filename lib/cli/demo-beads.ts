import type { Outcome, TriedChange } from "@/lib/assess";
import type { RunSetup } from "@/lib/setup";
import type { ImperfectionId } from "@/lib/trade";

export interface DemoBead {
  /** Name of a picture in demo-images/set. */
  readonly picture: string;
  readonly title: string;
  readonly welder: string;
  readonly daysAgo: number;
  /** What differs from the set-up the picture was made with: the fault as it would stand in the record. */
  readonly setup: Partial<RunSetup>;
  readonly criteriaId: string | null;
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

const C = "iso-5817-c";
const D11 = "aws-d1-1-static";

export const demoBeads: readonly DemoBead[] = [
  {
    picture: "stringer-ropey",
    title: "Stringer gone ropey",
    welder: "Maren Tolloch",
    daysAgo: 12,
    setup: { ctwdMm: 32, volts: 14 },
    criteriaId: null,
    lookedFor: ["surface-porosity"],
    note: "",
  },
  {
    picture: "stringer-pad-good",
    title: "Stringer gone ropey, try 2",
    welder: "Maren Tolloch",
    daysAgo: 11,
    setup: {},
    after: {
      picture: "stringer-ropey",
      tried: {
        causeId: "ctwd-long",
        sentence: "Shorten the stick-out.",
        step: "Tip to work from 32 mm down to 19 mm",
      },
      outcome: "cured",
    },
    criteriaId: null,
    lookedFor: ["undercut", "overlap", "surface-porosity", "crater-crack"],
    note: "Even pitch now. Keep the aim at the toe of the last one.",
  },
  {
    picture: "lap-cold-lap",
    title: "Lap on 2 mm, lower toe rolled over",
    welder: "Idris Quenby",
    daysAgo: 9,
    setup: {},
    criteriaId: C,
    lookedFor: ["longitudinal-crack", "transverse-crack", "crater-crack", "surface-porosity", "burn-through"],
    note: "",
  },
  {
    picture: "tee-undercut",
    title: "T-joint, undercut along the upper toe",
    welder: "Idris Quenby",
    daysAgo: 8,
    setup: {},
    criteriaId: D11,
    lookedFor: [
      "longitudinal-crack",
      "transverse-crack",
      "crater-crack",
      "overlap",
      "surface-porosity",
      "wormhole",
    ],
    note: "Depth still to be read with the undercut gauge.",
  },
  {
    picture: "tee-porosity-soot",
    title: "Soot and pores after the wire change",
    welder: "Sunniva Aldred",
    daysAgo: 7,
    setup: { polarity: "DCEP" },
    criteriaId: C,
    lookedFor: ["longitudinal-crack", "crater-crack"],
    note: "Somebody had gas-shielded wire on before.",
  },
  {
    picture: "vertical-up-uneven",
    title: "First vertical up",
    welder: "Tobin Eskdale",
    daysAgo: 6,
    setup: {},
    criteriaId: null,
    lookedFor: [],
    note: "",
  },
  {
    picture: "tee-uneven-legs",
    title: "T-joint, all on the bottom plate",
    welder: "Sunniva Aldred",
    daysAgo: 6,
    setup: {},
    criteriaId: C,
    lookedFor: ["longitudinal-crack", "crater-crack", "undercut", "overlap"],
    note: "Both legs still to be read with the fillet gauge.",
  },
  {
    picture: "poor-start-arc-strike",
    title: "Struck beside the joint",
    welder: "Tobin Eskdale",
    daysAgo: 6,
    setup: {},
    criteriaId: null,
    lookedFor: [],
    note: "",
  },
  {
    picture: "groove-trapped-slag",
    title: "Groove over backing, slag between runs",
    welder: "Sunniva Aldred",
    daysAgo: 5,
    setup: {},
    criteriaId: D11,
    lookedFor: ["longitudinal-crack", "transverse-crack", "crater-crack"],
    note: "",
  },
  {
    picture: "gas-marks-wormholes",
    title: "Worm tracks under the slag",
    welder: "Sunniva Aldred",
    daysAgo: 5,
    setup: {},
    criteriaId: null,
    lookedFor: [],
    note: "Spool had stood open since spring.",
  },
  {
    picture: "stainless-temper-colour",
    title: "Stainless, too blue",
    welder: "Tobin Eskdale",
    daysAgo: 3,
    setup: {},
    criteriaId: null,
    lookedFor: [],
    note: "",
  },
  {
    picture: "stainless-lap-spatter",
    title: "Stainless lap, spatter everywhere",
    welder: "Idris Quenby",
    daysAgo: 2,
    setup: {},
    criteriaId: C,
    lookedFor: ["longitudinal-crack", "crater-crack", "overlap"],
    note: "",
  },
  {
    picture: "burn-through-sheet",
    title: "Blew through the sheet",
    welder: "Maren Tolloch",
    daysAgo: 1,
    setup: {},
    criteriaId: C,
    lookedFor: [],
    note: "",
  },
  {
    picture: "crater-crack",
    title: "Star in the crater",
    welder: "Tobin Eskdale",
    daysAgo: 0,
    setup: {},
    criteriaId: C,
    lookedFor: ["surface-porosity", "undercut"],
    note: "Left as it is until it has been looked at.",
  },
];
