import { isFillet, type Joint } from "./names";

/**
 * The vocabulary of visible imperfections: what a person can mark on a photo, what a cause explains and what a
 * criteria set limits. One id serves all three. Numbers are those of ISO 6520-1 (2007), many of them from memory;
 * names are the trade's own. Ids are stored with marks: never rename, only add at the end.
 */
export const imperfectionIds = [
  "surface-porosity",
  "wormhole",
  "gas-mark",
  "undercut",
  "overlap",
  "lack-of-fusion",
  "convex-bead",
  "flat-wide-bead",
  "concave-face",
  "spatter",
  "trapped-slag",
  "stuck-slag",
  "burn-through",
  "excess-penetration",
  "incomplete-penetration",
  "root-concavity",
  "open-crater",
  "crater-pipe",
  "crater-crack",
  "longitudinal-crack",
  "transverse-crack",
  "underfill",
  "uneven-legs",
  "undersized",
  "oversized",
  "wandering",
  "uneven-width",
  "poor-start",
  "arc-strike",
  "temper-colour",
  "wire-stub",
  "misalignment",
  "missing-length",
  "irregular-surface",
  "sagging",
  "toe-crack",
  "steep-toe",
  "angular-misalignment",
  "torn-surface",
  "grinding-mark",
  "chipping-mark",
  "underflushing",
  "radiating-crack",
  "crack-group",
  "branching-crack",
  "tungsten-inclusion",
  "copper-inclusion",
  "burnback",
  "wide-root-gap",
] as const;
export type ImperfectionId = (typeof imperfectionIds)[number];

export type MarkShape = "point" | "line" | "outline";

export interface Imperfection {
  readonly id: ImperfectionId;
  readonly name: string;
  /** What the welder calls it at the bench, where that differs. */
  readonly alsoCalled: readonly string[];
  /** ISO 6520-1 reference number, null where the standard has none for it. */
  readonly iso6520: string | null;
  /** Its other number in a butt weld, where the standard numbers one shape twice; null: the number above serves all. */
  readonly iso6520InButt: string | null;
  /** One sentence on how to tell it from its neighbours on a chipped bead. */
  readonly look: string;
  /** The shape most people will want for marking it; others stay allowed. */
  readonly usualShape: MarkShape;
  /** "gas", "shape", "fusion", "crack", "slag", "surface": drives grouping in pickers, not judgement. */
  readonly group: "gas" | "shape" | "fusion" | "crack" | "slag" | "surface";
  /** True: a qualified inspector sees it before anything is changed or repaired. */
  readonly inspectorFirst: boolean;
}

const entry = (
  id: ImperfectionId,
  name: string,
  alsoCalled: readonly string[],
  iso6520: string | null,
  usualShape: MarkShape,
  group: Imperfection["group"],
  look: string,
  inspectorFirst = false,
  iso6520InButt: string | null = null,
): Imperfection => ({
  id,
  name,
  alsoCalled,
  iso6520,
  iso6520InButt,
  usualShape,
  group,
  look,
  inspectorFirst,
});

export const imperfections: Readonly<Record<ImperfectionId, Imperfection>> = {
  "surface-porosity": entry(
    "surface-porosity",
    "Surface porosity",
    ["pores", "pinholes", "blowhole"],
    "2017",
    "point",
    "gas",
    "Round open holes with a dark floor and a bright rim.",
  ),
  wormhole: entry(
    "wormhole",
    "Wormholes",
    ["piping porosity"],
    "2016",
    "line",
    "gas",
    "Elongated holes running with the freezing front, often as a herringbone.",
  ),
  "gas-mark": entry(
    "gas-mark",
    "Gas marks under slag",
    ["worm tracks", "snail trails", "pockmarks"],
    null,
    "line",
    "gas",
    "Shallow grooves pressed into the face under the slag; a floor, not a hole.",
  ),
  undercut: entry(
    "undercut",
    "Undercut",
    [],
    "501",
    "line",
    "shape",
    "A groove melted into the plate beside the toe and left unfilled.",
  ),
  overlap: entry(
    "overlap",
    "Cold lap (overlap)",
    ["cold lap", "roll-over", "lapped"],
    "506",
    "line",
    "fusion",
    "Metal rolled over the toe and lying on the plate without a smooth tie-in.",
  ),
  "lack-of-fusion": entry(
    "lack-of-fusion",
    "Suspected lack of fusion",
    ["cold toe", "LOF", "lack of side-wall fusion"],
    "401",
    "line",
    "fusion",
    "A sharp dark line at the toe or between beads; sight alone cannot settle it.",
    true,
  ),
  "convex-bead": entry(
    "convex-bead",
    "Ropey or convex bead",
    ["ropey", "ropy", "high crown"],
    "503",
    "line",
    "shape",
    "High and narrow, round like a rope laid on the plate.",
    false,
    "502",
  ),
  "flat-wide-bead": entry(
    "flat-wide-bead",
    "Wide, flat bead",
    ["washed out"],
    "5212",
    "line",
    "shape",
    "Spread thin and wide for the metal that went in.",
  ),
  "concave-face": entry(
    "concave-face",
    "Concave face",
    ["hollow face"],
    null,
    "line",
    "shape",
    "The fillet face is hollow between the toes; the throat is smaller than it looks.",
  ),
  spatter: entry(
    "spatter",
    "Spatter",
    [],
    "602",
    "outline",
    "surface",
    "Balls of metal stuck to plate or bead, each with its own shadow.",
  ),
  "trapped-slag": entry(
    "trapped-slag",
    "Slag trapped",
    ["slag inclusion"],
    "301",
    "line",
    "slag",
    "Dark glassy slag caught in the toe, between beads or in a pocket.",
  ),
  "stuck-slag": entry(
    "stuck-slag",
    "Slag hard to remove",
    [],
    "615",
    "outline",
    "slag",
    "Slag keyed into the face or toes that does not chip off cleanly.",
  ),
  "burn-through": entry(
    "burn-through",
    "Burn-through",
    ["blow-through", "melt-through", "burn thru"],
    "510",
    "outline",
    "fusion",
    "The pool fell through and left a hole or a drip.",
  ),
  "excess-penetration": entry(
    "excess-penetration",
    "Excess penetration at the root",
    [],
    "504",
    "line",
    "shape",
    "Metal standing proud of the back side.",
  ),
  "incomplete-penetration": entry(
    "incomplete-penetration",
    "Incomplete root penetration",
    [],
    "4021",
    "line",
    "fusion",
    "Root edges still visible on the back side.",
    true,
  ),
  "root-concavity": entry(
    "root-concavity",
    "Root concavity",
    ["suck-back"],
    "515",
    "line",
    "shape",
    "The root lies below the back of the plate.",
  ),
  "open-crater": entry(
    "open-crater",
    "Unfilled crater",
    ["open crater"],
    null,
    "outline",
    "shape",
    "The end of the bead is dished below the face.",
  ),
  "crater-pipe": entry(
    "crater-pipe",
    "End crater pipe",
    [],
    "2025",
    "point",
    "gas",
    "A single deep hole at the bottom of the end crater.",
  ),
  "crater-crack": entry(
    "crater-crack",
    "Crater crack",
    ["star crack"],
    "104",
    "line",
    "crack",
    "A short line or a star in the end crater.",
    true,
  ),
  "longitudinal-crack": entry(
    "longitudinal-crack",
    "Crack along the bead",
    ["centreline crack"],
    "101",
    "line",
    "crack",
    "A fine line running with the weld.",
    true,
  ),
  "transverse-crack": entry(
    "transverse-crack",
    "Crack across the bead",
    [],
    "102",
    "line",
    "crack",
    "A fine line running across the weld.",
    true,
  ),
  underfill: entry(
    "underfill",
    "Underfill",
    ["incompletely filled"],
    "511",
    "line",
    "shape",
    "The face lies below the plate surface along the groove.",
  ),
  "uneven-legs": entry(
    "uneven-legs",
    "Uneven legs",
    [],
    "512",
    "line",
    "shape",
    "One fillet leg clearly longer than the other.",
  ),
  undersized: entry(
    "undersized",
    "Undersized fillet",
    [],
    "5213",
    "line",
    "shape",
    "Leg or throat below what was asked for.",
  ),
  oversized: entry(
    "oversized",
    "Oversized weld",
    [],
    "5214",
    "line",
    "shape",
    "More metal than was asked for.",
  ),
  wandering: entry(
    "wandering",
    "Wandering bead",
    [],
    null,
    "line",
    "shape",
    "The bead leaves the joint line and comes back.",
  ),
  "uneven-width": entry(
    "uneven-width",
    "Uneven width",
    [],
    "513",
    "line",
    "shape",
    "The toes are not parallel: the bead swells and narrows.",
  ),
  "poor-start": entry(
    "poor-start",
    "Poor start or restart",
    ["stubbing", "cold start", "stop-start"],
    "517",
    "outline",
    "shape",
    "A lump, a gap or stubbed wire where the arc was struck.",
  ),
  "arc-strike": entry(
    "arc-strike",
    "Arc strike",
    ["stray arc"],
    "601",
    "point",
    "surface",
    "A burn on the plate away from the bead.",
    true,
  ),
  "temper-colour": entry(
    "temper-colour",
    "Temper colour",
    ["heat tint", "oxidised"],
    "610",
    "outline",
    "surface",
    "Straw to blue or a grey crust on stainless steel.",
  ),
  "wire-stub": entry(
    "wire-stub",
    "Wire stub",
    ["whisker"],
    null,
    "line",
    "surface",
    "A piece of unmelted wire frozen into the bead.",
  ),
  misalignment: entry(
    "misalignment",
    "Linear misalignment",
    ["hi-lo"],
    "5071",
    "line",
    "shape",
    "The two plates do not lie in one plane at the joint.",
  ),
  "missing-length": entry(
    "missing-length",
    "Missing length",
    ["short weld", "stopped short"],
    null,
    "line",
    "shape",
    "The weld ends before the length that was asked for; bare joint is left.",
  ),
  "irregular-surface": entry(
    "irregular-surface",
    "Irregular surface",
    ["rough face", "lumpy bead", "humping"],
    "514",
    "outline",
    "shape",
    "Ripples of uneven height: lumps and dips along the face between parallel toes.",
  ),
  sagging: entry(
    "sagging",
    "Sagging",
    ["slumped bead", "sagged face", "sag", "drip"],
    "509",
    "outline",
    "shape",
    "The metal sank before it froze: a belly hangs low on the face, hollow above it.",
  ),
  "toe-crack": entry(
    "toe-crack",
    "Crack at the toe",
    ["toe crack"],
    null,
    "line",
    "crack",
    "A fine jagged line in the plate along the toe; unlike undercut it has no width.",
    true,
  ),
  "steep-toe": entry(
    "steep-toe",
    "Steep toe",
    ["bad toe angle", "bulging toe"],
    "505",
    "line",
    "shape",
    "The face meets the plate at a steep step; unlike cold lap it is tied in.",
  ),
  "angular-misalignment": entry(
    "angular-misalignment",
    "Angular misalignment",
    ["pulled up plate", "peaking", "warped"],
    "508",
    "line",
    "shape",
    "The plates meet at an angle they should not have: a straight edge rocks over the joint.",
  ),
  "torn-surface": entry(
    "torn-surface",
    "Torn surface",
    ["torn-off tack", "bracket scar"],
    "603",
    "outline",
    "surface",
    "A ragged scar with a bright broken floor where something was knocked off the plate.",
  ),
  "grinding-mark": entry(
    "grinding-mark",
    "Grinding mark",
    ["grinder gouge", "disc mark"],
    "604",
    "outline",
    "surface",
    "Parallel bright scratches or a smooth hollow left by a grinding disc.",
  ),
  "chipping-mark": entry(
    "chipping-mark",
    "Chipping mark",
    ["hammer mark", "chisel nick"],
    "605",
    "line",
    "surface",
    "Short sharp dents from a chipping hammer or chisel, most often beside the toe.",
  ),
  underflushing: entry(
    "underflushing",
    "Underflushing",
    ["over-ground", "ground below flush"],
    "606",
    "outline",
    "surface",
    "Ground bright and smooth, but lower than the plate around it.",
  ),
  "radiating-crack": entry(
    "radiating-crack",
    "Radiating cracks",
    ["star of cracks"],
    "103",
    "line",
    "crack",
    "Several cracks that run out from one point, away from the end crater.",
    true,
  ),
  "crack-group": entry(
    "crack-group",
    "Group of cracks",
    ["several cracks", "cracked patch"],
    "105",
    "outline",
    "crack",
    "Several separate fine lines close together, in no common direction.",
    true,
  ),
  "branching-crack": entry(
    "branching-crack",
    "Branching crack",
    ["forked crack"],
    "106",
    "line",
    "crack",
    "One crack that forks, like a twig.",
    true,
  ),
  "tungsten-inclusion": entry(
    "tungsten-inclusion",
    "Tungsten inclusion",
    ["tungsten speck", "dipped tungsten"],
    "3041",
    "point",
    "fusion",
    "A hard bright silvery speck in or on the bead, from the electrode.",
  ),
  "copper-inclusion": entry(
    "copper-inclusion",
    "Copper inclusion",
    ["piece of tip", "copper pick-up"],
    "3042",
    "point",
    "fusion",
    "A reddish speck or smear of copper melted into the bead.",
  ),
  burnback: entry(
    "burnback",
    "Burnback",
    ["wire burnt back to the tip", "stuck in the tip"],
    null,
    "point",
    "surface",
    "The bead breaks off at a ball of wire: the wire melted back to the contact tip.",
  ),
  "wide-root-gap": entry(
    "wide-root-gap",
    "Wide root gap",
    ["poor fit-up", "open root"],
    "617",
    "line",
    "shape",
    "The plates of a fillet do not meet: light or a feeler passes under the weld at its ends or from the back.",
  ),
};

const touchNothing =
  "Touch nothing: no grinding, no welding over. Mark both ends; it is longer than it looks.";

/**
 * What to do about the place itself before anything is cured or judged, imperative; nothing is assessed by it, so no seal of
 * tables covers it. Common practice, no source.
 */
export const firstActs: Readonly<Record<ImperfectionId, string>> = {
  "surface-porosity":
    "Brush it bright, count the pores and measure the widest one: there are often more below.",
  wormhole: "Brush it bright, and measure the longest and how far along the weld they go.",
  "gas-mark": "Brush it bright and feel whether it has a floor. Where it has none, mark it as porosity.",
  undercut: "Gauge its depth where it is deepest, and measure its length.",
  overlap: "Measure its length, and feel with a thin blade how far it goes under.",
  "lack-of-fusion":
    "Leave it as it is: sight alone cannot settle it. Mark where it begins and ends for another method.",
  "convex-bead": "Gauge the height of the face over the line between the toes, and look at both toes.",
  "flat-wide-bead": "Gauge the throat or the height: wide does not mean enough.",
  "concave-face": "Gauge the throat in the middle, not the legs.",
  spatter: "Scrape a few off and see whether the plate is whole beneath.",
  "trapped-slag": "Chip and brush again. Only what stays is slag that was trapped.",
  "stuck-slag": "Get it off before anything is judged: slag hides what lies below.",
  "burn-through": "Measure the hole from both sides and look how thin the edge is.",
  "excess-penetration": "Measure how far it stands proud on the back.",
  "incomplete-penetration":
    "Leave it as it is, and measure how long the root edges stay visible on the back.",
  "root-concavity": "Measure how far the root lies below the plate, on the back.",
  "open-crater": "Clean it and look with a magnifier for a crack before anything else.",
  "crater-pipe": "Clean it and measure its width: it is deep, and a crack may start from it.",
  "crater-crack": touchNothing,
  "longitudinal-crack": touchNothing,
  "transverse-crack": touchNothing,
  underfill: "Lay a straight edge over both plates and measure to the face.",
  "uneven-legs": "Gauge both legs in several places.",
  undersized: "Gauge both legs in several places, and measure how long the short stretch is.",
  oversized: "Gauge both legs. Too much metal is seldom refused, but it heats and pulls the plate.",
  wandering: "See whether both edges of the joint are covered all along.",
  "uneven-width": "Measure the widest and the narrowest place.",
  "poor-start": "Measure how high the lump is and look at its toes.",
  "arc-strike": "Do not grind it yet: on hardenable steel it may hide a crack.",
  "temper-colour": "Note the darkest colour and how far it reaches, before it is brushed.",
  "wire-stub": "See whether it stands in the weld or only beside it.",
  misalignment: "Lay a straight edge over both plates and measure the step.",
  "missing-length": "Measure from end to end, craters not counted.",
  "irregular-surface": "Gauge the highest lump over the lowest dip beside it.",
  sagging: "Gauge both legs and the throat: the metal is not where it should be.",
  "toe-crack": touchNothing,
  "steep-toe": "Measure the angle between face and plate.",
  "angular-misalignment": "Lay a straight edge over the joint and measure the angle or the gap at its end.",
  "torn-surface": "Measure how deep it is, and look with a magnifier whether a crack runs from it.",
  "grinding-mark": "Measure how deep it is and how much plate is left.",
  "chipping-mark": "Feel how deep the deepest is.",
  underflushing: "Measure how much is missing and how thick the plate still is.",
  "radiating-crack": touchNothing,
  "crack-group": touchNothing,
  "branching-crack": touchNothing,
  "tungsten-inclusion": "Mark the place: more may lie below, and only another method shows it.",
  "copper-inclusion": "Mark the place and look with a magnifier: copper can crack the steel around it.",
  burnback: "See how the bead ends under the ball: crater, cracks and length.",
  "wide-root-gap": "Measure the gap with a feeler at its widest.",
};

/** ISO 6520-1 number in this joint; null where there is none, or where it depends on a joint that is not known. */
export function isoNumber(id: ImperfectionId, joint: Joint | null): string | null {
  const { iso6520, iso6520InButt } = imperfections[id];
  if (iso6520InButt === null) return iso6520;
  if (joint === null) return null;
  return isFillet(joint) ? iso6520 : iso6520InButt;
}

/** The number as it is shown: "503", or "503, butt weld 502" while nobody said which joint it is. */
export function isoNumberText(id: ImperfectionId, joint: Joint | null): string | null {
  const { iso6520, iso6520InButt } = imperfections[id];
  return joint === null && iso6520InButt !== null
    ? `${iso6520}, butt weld ${iso6520InButt}`
    : isoNumber(id, joint);
}

/** Every kind of crack: what is looked for, refused and shown to an inspector together. */
export const crackIds: readonly ImperfectionId[] = imperfectionIds.filter(
  (id) => imperfections[id].group === "crack",
);

/** Where across the weld a mark lies. */
export const places = [
  "upper-toe",
  "lower-toe",
  "left-toe",
  "right-toe",
  "both-toes",
  "face",
  "root",
  "beside",
] as const;
export type Place = (typeof places)[number];

/** Where along the weld a mark lies. */
export const stretches = ["start", "run", "whole-length", "crater", "restart"] as const;
export type Stretch = (typeof stretches)[number];

/** How the imperfections lie, or what is seen with them. Each is something a person can see and tick. */
export const patterns = [
  "single",
  "scattered",
  "clustered",
  "in-line",
  "herringbone",
  "periodic",
  "intermittent",
  "continuous",
  "one-side",
  "weave-turns",
  "with-soot",
  "with-dull-grey-face",
  "fine",
  "coarse",
] as const;
export type Pattern = (typeof patterns)[number];

/** One imperfection as seen, free of pixels: what the diagnosis and the judgement share. */
export interface Finding {
  readonly imperfection: ImperfectionId;
  readonly place: Place | null;
  readonly stretch: Stretch | null;
  readonly patterns: readonly Pattern[];
}
