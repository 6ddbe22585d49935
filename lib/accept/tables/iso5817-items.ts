import type { Confidence } from "@/lib/base";
import type { ImperfectionId } from "@/lib/trade";
import type { Condition, Criterion, Test } from "../rule";
import {
  allowed,
  atLeast,
  atMost,
  butt,
  cracksOutsideCraters,
  each,
  fillet,
  figureByPerson,
  min,
  none,
  orPerson,
  personDecides,
  sum,
  times,
} from "./parts";

export type IsoLevel = "B" | "C" | "D";

/** Confidence of the figure, then the tests. */
type Cell = readonly [Confidence, ...Test[]];

export interface IsoVariant {
  readonly when: readonly Condition[];
  readonly D: Cell;
  readonly C: Cell;
  readonly B: Cell;
}

/** What the item says from an edition on; null: it ends there. */
export interface IsoEntry {
  readonly from: string;
  readonly variants: readonly IsoVariant[] | null;
}

export interface IsoItem extends Omit<Criterion, "clause" | "variants"> {
  /** Item number in Table 1. */
  readonly item: string;
  readonly editions: readonly IsoEntry[];
}

const thin: Condition = { symbol: "t", upTo: 3 };
const thick: Condition = { symbol: "t", above: 3 };
/** Beads laid on a plate are held to the butt weld's figures: by analogy, see `notCovered`. */
const buttLike: Condition = { kind: ["butt", "surfacing"] };

const noneAtAll = (d: Confidence, c: Confidence, b: Confidence): IsoVariant => ({
  when: [],
  D: [d, none],
  C: [c, none],
  B: [b, none],
});

/** Clause 3: total length at most 25 mm in the worst 100 mm, or a quarter of a shorter weld. From memory. */
const shortOnly: Test = {
  test: "total",
  of: ["length"],
  window: 100,
  limit: min(25, times(0.25, "L")),
};
const short = (limit: Parameters<typeof each>[1]): [Test, Test] => [each("depth", limit), shortOnly];

const item = (
  number: string,
  id: string,
  title: string,
  imperfections: readonly ImperfectionId[],
  variants: readonly IsoVariant[],
  {
    later = [],
    ...extra
  }: Partial<Pick<Criterion, "places" | "onlyWhenSeen" | "onlyWhenRead">> & {
    readonly later?: readonly IsoEntry[];
  } = {},
): IsoItem => ({
  item: number,
  id,
  title,
  imperfections,
  editions: [{ from: "2014", variants }, ...later],
  ...extra,
});

/** Changed in 2023, figure not known to us: where two lie in one section, a person decides. */
const addUp: Test = { test: "stack", limit: 0, beyond: "person-decides" };
const together: IsoVariant = { when: [], D: ["memory", addUp], C: ["memory", addUp], B: ["memory", addUp] };
/** The same where the stricter levels allowed none in 2014: that none is allowed does not hang on a throat. */
const notKnownUnlessNone = (when: readonly Condition[], c: "none" | "not-known"): IsoVariant => ({
  when,
  D: ["memory", personDecides],
  C: c === "none" ? ["seen-older", none] : ["memory", personDecides],
  B: ["seen-older", none],
});

const gapByPerson: IsoVariant = {
  when: [fillet],
  D: ["memory", figureByPerson("root-gap")],
  C: ["memory", figureByPerson("root-gap")],
  B: ["memory", figureByPerson("root-gap")],
};

/**
 * ISO 5817 Table 1, what can be seen or gauged from outside, from the 2014 edition on. Limits in mm. New figures are
 * appended as entries of the edition in which they begin; those that stand are never changed.
 */
export const isoItems: readonly IsoItem[] = [
  item("1.1", "crack", "Cracks", cracksOutsideCraters, [noneAtAll("seen", "seen", "seen")]),
  item("1.2", "crater-crack", "Crater crack", ["crater-crack"], [noneAtAll("seen", "seen", "seen")]),
  item(
    "1.3",
    "surface-pore",
    "Surface pore, diameter",
    ["surface-porosity"],
    [
      {
        when: [fillet, thin],
        D: ["seen", each("diameter", times(0.3, "a"))],
        C: ["seen", none],
        B: ["seen", none],
      },
      {
        when: [fillet, thick],
        D: ["seen", each("diameter", min(times(0.3, "a"), 3))],
        C: ["seen", each("diameter", min(times(0.2, "a"), 2))],
        B: ["seen", none],
      },
      {
        when: [buttLike, thin],
        D: ["seen", each("diameter", times(0.3, "s"))],
        C: ["seen", none],
        B: ["seen", none],
      },
      {
        when: [buttLike, thick],
        D: ["seen", each("diameter", min(times(0.3, "s"), 3))],
        C: ["seen", each("diameter", min(times(0.2, "s"), 2))],
        B: ["seen", none],
      },
    ],
    {
      places: { not: ["root"] },
      later: [
        {
          from: "2023",
          variants: [
            {
              when: [fillet, thin],
              D: ["memory", orPerson(each("diameter", times(0.3, "A")))],
              C: ["seen-older", none],
              B: ["seen-older", none],
            },
            {
              when: [fillet, thick],
              D: ["memory", orPerson(each("diameter", min(times(0.3, "A"), 3)))],
              C: ["memory", orPerson(each("diameter", min(times(0.2, "A"), 2)))],
              B: ["seen-older", none],
            },
            {
              when: [buttLike, thin],
              D: ["seen-older", each("diameter", times(0.3, "s"))],
              C: ["seen-older", none],
              B: ["seen-older", none],
            },
            {
              when: [buttLike, thick],
              D: ["seen-older", each("diameter", min(times(0.3, "s"), 3))],
              C: ["seen-older", each("diameter", min(times(0.2, "s"), 2))],
              B: ["seen-older", none],
            },
          ],
        },
      ],
    },
  ),
  item(
    "1.4",
    "end-crater-pipe",
    "End crater or end crater pipe, depth",
    ["crater-pipe", "open-crater"],
    [
      { when: [thin], D: ["seen", each("depth", times(0.2, "t"))], C: ["seen", none], B: ["seen", none] },
      {
        when: [thick],
        D: ["seen", each("depth", min(times(0.2, "t"), 2))],
        C: ["seen", each("depth", min(times(0.1, "t"), 1))],
        B: ["seen", none],
      },
    ],
    {
      later: [
        {
          from: "2023",
          variants: [
            notKnownUnlessNone([fillet, thin], "none"),
            notKnownUnlessNone([fillet, thick], "not-known"),
            {
              when: [thin],
              D: ["seen-older", each("depth", times(0.2, "t"))],
              C: ["seen-older", none],
              B: ["seen-older", none],
            },
            {
              when: [thick],
              D: ["seen-older", each("depth", min(times(0.2, "t"), 2))],
              C: ["seen-older", each("depth", min(times(0.1, "t"), 1))],
              B: ["seen-older", none],
            },
          ],
        },
      ],
    },
  ),
  item("1.5", "lack-of-fusion", "Lack of fusion", ["lack-of-fusion"], [noneAtAll("seen", "seen", "seen")]),
  item(
    "1.6",
    "root-penetration",
    "Incomplete root penetration, single-side butt",
    ["incomplete-penetration"],
    [
      {
        when: [butt, { flag: "singleSided", is: true }],
        D: ["seen", ...short(min(times(0.2, "t"), 2))],
        C: ["seen", none],
        B: ["seen", none],
      },
    ],
  ),
  item(
    "1.7",
    "undercut",
    "Undercut, depth",
    ["undercut"],
    [
      {
        when: [thin],
        D: ["seen-older", ...short(times(0.2, "t"))],
        C: ["seen-older", ...short(times(0.1, "t"))],
        B: ["seen-older", none],
      },
      {
        when: [thick],
        D: ["seen-older", each("depth", min(times(0.2, "t"), 1))],
        C: ["seen-older", each("depth", min(times(0.1, "t"), 0.5))],
        B: ["seen-older", each("depth", min(times(0.05, "t"), 0.5))],
      },
    ],
    { places: { not: ["root"] } },
  ),
  item(
    "1.8",
    "shrinkage-groove",
    "Shrinkage groove at the root, depth",
    ["undercut"],
    [
      {
        when: [butt, thin],
        D: ["seen-older", each("depth", sum(0.2, times(0.1, "t")))],
        C: ["seen-older", ...short(times(0.1, "t"))],
        B: ["seen-older", none],
      },
      {
        when: [butt, thick],
        D: ["seen-older", ...short(min(times(0.2, "t"), 2))],
        C: ["seen-older", ...short(min(times(0.1, "t"), 1))],
        B: ["seen-older", ...short(min(times(0.05, "t"), 0.5))],
      },
    ],
    { places: { only: ["root"] } },
  ),
  item(
    "1.9",
    "excess-weld-metal",
    "Excess weld metal (502), height",
    ["convex-bead"],
    [
      {
        when: [buttLike],
        D: ["seen", atMost("reinforcement", min(sum(1, times(0.25, "b")), 10))],
        C: ["seen", atMost("reinforcement", min(sum(1, times(0.15, "b")), 7))],
        B: ["seen-older", atMost("reinforcement", min(sum(1, times(0.1, "b")), 5))],
      },
    ],
  ),
  item(
    "1.10",
    "convexity",
    "Excessive convexity of a fillet (503)",
    ["convex-bead"],
    [
      {
        when: [fillet],
        D: ["seen-older", atMost("convexity", min(sum(1, times(0.25, "b")), 5))],
        C: ["seen-older", atMost("convexity", min(sum(1, times(0.15, "b")), 4))],
        B: ["seen-older", atMost("convexity", min(sum(1, times(0.1, "b")), 3))],
      },
    ],
  ),
  item(
    "1.11",
    "excess-penetration",
    "Excess penetration, height",
    ["excess-penetration"],
    [
      {
        when: [butt, thin],
        D: ["seen-older", each("height", sum(1, times(0.6, "r")))],
        C: ["seen-older", each("height", sum(1, times(0.3, "r")))],
        B: ["seen-older", each("height", sum(1, times(0.1, "r")))],
      },
      {
        when: [butt, thick],
        D: ["seen-older", each("height", min(sum(1, times(1, "r")), 5))],
        C: ["seen-older", each("height", min(sum(1, times(0.6, "r")), 4))],
        B: ["seen-older", each("height", min(sum(1, times(0.2, "r")), 3))],
      },
    ],
  ),
  item(
    "1.12",
    "toe-angle",
    "Weld toe angle",
    ["convex-bead", "steep-toe"],
    [
      {
        when: [buttLike],
        D: ["memory", atLeast("toe-angle", 90, true)],
        C: ["seen-older", atLeast("toe-angle", 110, true)],
        B: ["seen-older", atLeast("toe-angle", 150, true)],
      },
      {
        when: [fillet],
        D: ["memory", atLeast("toe-angle", 90, true)],
        C: ["seen-older", atLeast("toe-angle", 100, true)],
        B: ["memory", atLeast("toe-angle", 110, true)],
      },
    ],
  ),
  item(
    "1.13",
    "overlap",
    "Overlap",
    ["overlap"],
    [
      {
        when: [],
        D: ["memory", each("height", times(0.2, "b"))],
        C: ["seen-older", none],
        B: ["seen-older", none],
      },
    ],
  ),
  item(
    "1.14",
    "underfill",
    "Sagging or incompletely filled groove, depth",
    ["underfill", "sagging"],
    [
      {
        when: [butt, thin],
        D: ["memory", ...short(times(0.25, "t"))],
        C: ["seen-older", ...short(times(0.1, "t"))],
        B: ["seen-older", none],
      },
      {
        when: [butt, thick],
        D: ["memory", ...short(min(times(0.25, "t"), 2))],
        C: ["seen-older", ...short(min(times(0.1, "t"), 1))],
        B: ["seen-older", ...short(min(times(0.05, "t"), 0.5))],
      },
    ],
  ),
  item(
    "1.15",
    "burn-through",
    "Burn-through",
    ["burn-through"],
    [noneAtAll("memory", "seen-older", "seen-older")],
  ),
  item(
    "1.16",
    "asymmetry",
    "Unequal legs, difference",
    ["uneven-legs"],
    [
      {
        when: [fillet, { setting: "unequalLegsAskedFor", is: false }],
        D: ["seen-older", atMost("leg-difference", sum(2, times(0.2, "a")))],
        C: ["seen-older", atMost("leg-difference", sum(2, times(0.15, "a")))],
        B: ["seen-older", atMost("leg-difference", sum(1.5, times(0.15, "a")))],
      },
    ],
    {
      later: [
        {
          from: "2023",
          variants: [
            {
              when: [fillet, { setting: "unequalLegsAskedFor", is: false }],
              D: ["memory", orPerson(atMost("leg-difference", sum(2, times(0.2, "A"))))],
              C: ["memory", orPerson(atMost("leg-difference", sum(2, times(0.15, "A"))))],
              B: ["memory", orPerson(atMost("leg-difference", sum(1.5, times(0.15, "A"))))],
            },
          ],
        },
      ],
    },
  ),
  item(
    "1.17",
    "root-concavity",
    "Root concavity, depth",
    ["root-concavity"],
    [
      {
        when: [butt, thin],
        D: ["memory", each("depth", sum(0.2, times(0.1, "t")))],
        C: ["seen-part", ...short(times(0.1, "t"))],
        B: ["seen-older", none],
      },
      {
        when: [butt, thick],
        D: ["memory", ...short(min(times(0.2, "t"), 2))],
        C: ["seen-older", ...short(min(times(0.1, "t"), 1))],
        B: ["seen-older", ...short(min(times(0.05, "t"), 0.5))],
      },
    ],
  ),
  item(
    "1.18",
    "root-porosity",
    "Root porosity",
    ["surface-porosity"],
    [{ when: [butt], D: ["memory", allowed], C: ["seen-older", none], B: ["seen-older", none] }],
    { places: { only: ["root"] } },
  ),
  item(
    "1.19",
    "poor-restart",
    "Poor start or restart",
    ["poor-start"],
    [{ when: [], D: ["memory", allowed], C: ["seen-part", none], B: ["seen-older", none] }],
  ),
  item(
    "1.20",
    "throat-shortfall",
    "Insufficient throat, shortfall",
    ["undersized"],
    [
      {
        when: [fillet, thin],
        D: ["memory", ...shortThroat(sum(0.2, times(0.1, "a")))],
        C: ["memory", ...shortThroat(0.2)],
        B: ["seen-older", atMost("throat-shortfall", 0)],
      },
      {
        when: [fillet, thick],
        D: ["seen-older", ...shortThroat(min(sum(0.3, times(0.1, "a")), 2))],
        C: ["seen-older", ...shortThroat(min(sum(0.3, times(0.1, "a")), 1))],
        B: ["seen-older", atMost("throat-shortfall", 0)],
      },
    ],
  ),
  item(
    "1.21",
    "throat-excess",
    "Excessive throat, excess",
    ["oversized"],
    [
      {
        when: [fillet],
        D: ["memory", allowed],
        C: ["seen-older", atMost("throat-excess", min(sum(1, times(0.2, "a")), 4))],
        B: ["seen-older", atMost("throat-excess", min(sum(1, times(0.15, "a")), 3))],
      },
    ],
  ),
  item(
    "1.22",
    "stray-arc",
    "Stray arc",
    ["arc-strike"],
    [
      {
        when: [{ setting: "arcStrikes", is: "accepted" }],
        D: ["memory", allowed],
        C: ["memory", none],
        B: ["seen-older", none],
      },
      {
        when: [{ setting: "arcStrikes", is: "undecided" }],
        D: ["memory", personDecides],
        C: ["memory", none],
        B: ["seen-older", none],
      },
      { when: [], D: ["memory", none], C: ["memory", none], B: ["seen-older", none] },
    ],
  ),
  item("1.23", "spatter", "Spatter", ["spatter"], decidedByUse("spatter", "seen-older")),
  item("1.24", "temper-colour", "Temper colour", ["temper-colour"], decidedByUse("temperColour", "memory")),
  item(
    "3.1",
    "misalignment",
    "Linear misalignment",
    ["misalignment"],
    [
      {
        when: [butt, { seam: ["girth"] }],
        D: ["memory", atMost("misalignment", min(times(0.5, "t"), 4), true)],
        C: ["memory", atMost("misalignment", min(times(0.5, "t"), 3), true)],
        B: ["memory", atMost("misalignment", min(times(0.5, "t"), 2), true)],
      },
      {
        when: [butt, thin],
        D: ["memory", atMost("misalignment", sum(0.2, times(0.25, "t")), true)],
        C: ["memory", atMost("misalignment", sum(0.2, times(0.15, "t")), true)],
        B: ["memory", atMost("misalignment", sum(0.2, times(0.1, "t")), true)],
      },
      {
        when: [butt, thick],
        D: ["memory", atMost("misalignment", min(times(0.25, "t"), 5), true)],
        C: ["memory", atMost("misalignment", min(times(0.15, "t"), 4), true)],
        B: ["memory", atMost("misalignment", min(times(0.1, "t"), 3), true)],
      },
    ],
  ),
  item(
    "3.2",
    "root-gap",
    "Root gap of a fillet",
    ["wide-root-gap"],
    [
      {
        when: [fillet, thin],
        D: ["memory", atMost("root-gap", sum(0.5, times(0.1, "a")), true)],
        C: ["memory", atMost("root-gap", sum(0.3, times(0.1, "a")), true)],
        B: ["memory", atMost("root-gap", sum(0.2, times(0.1, "a")), true)],
      },
      {
        when: [fillet, thick],
        D: ["seen-older", atMost("root-gap", min(sum(1, times(0.3, "a")), 4), true)],
        C: ["seen-older", atMost("root-gap", min(sum(0.5, times(0.2, "a")), 3), true)],
        B: ["seen-older", atMost("root-gap", min(sum(0.5, times(0.1, "a")), 2), true)],
      },
    ],
    // On the throat as laid from 2023 on, and no figure known to us: a gap that was read goes to a person.
    { later: [{ from: "2023", variants: [gapByPerson] }] },
  ),
  item(
    "4.1",
    "several-in-one-section",
    "Several imperfections in one cross section, sum of heights",
    [
      "undercut",
      "overlap",
      "underfill",
      "sagging",
      "crater-pipe",
      "open-crater",
      "root-concavity",
      "excess-penetration",
      "incomplete-penetration",
    ],
    [
      {
        when: [thin],
        D: ["memory", { test: "stack", limit: 0 }],
        C: ["memory", { test: "stack", limit: 0 }],
        B: ["memory", { test: "stack", limit: 0 }],
      },
      {
        when: [fillet, thick],
        D: ["memory", { test: "stack", limit: times(0.25, "a") }],
        C: ["memory", { test: "stack", limit: times(0.2, "a") }],
        B: ["memory", { test: "stack", limit: times(0.15, "a") }],
      },
      {
        when: [buttLike, thick],
        D: ["memory", { test: "stack", limit: times(0.4, "t") }],
        C: ["memory", { test: "stack", limit: times(0.3, "t") }],
        B: ["memory", { test: "stack", limit: times(0.2, "t") }],
      },
    ],
    { onlyWhenSeen: true, later: [{ from: "2023", variants: [together] }] },
  ),
];

function shortThroat(limit: Parameters<typeof atMost>[1]): [Test, Test] {
  return [
    atMost("throat-shortfall", limit),
    {
      test: "total",
      of: ["length"],
      window: 100,
      limit: min(25, times(0.25, "L")),
      unless: "throat-shortfall",
    },
  ];
}

/** The table gives no number: the use decides, and until someone has said so it stays open. */
function decidedByUse(setting: string, b: Confidence): readonly IsoVariant[] {
  return [
    {
      when: [{ setting, is: "accepted" }],
      D: ["memory", allowed],
      C: ["memory", allowed],
      B: [b, allowed],
    },
    { when: [{ setting, is: "refused" }], D: ["memory", none], C: ["memory", none], B: [b, none] },
    { when: [], D: ["memory", personDecides], C: ["memory", personDecides], B: [b, personDecides] },
  ];
}
