import type { Confidence, Source } from "@/lib/base";
import { cite, titleOf, type DocumentId, type ImperfectionId } from "@/lib/trade";
import type { Condition, Constant, CriteriaSet, Criterion, Test, Variant } from "../rule";
import { undecided } from "../settings";
import {
  allowed,
  atMost,
  both,
  butt,
  cracks,
  cracksOutsideCraters,
  each,
  fillet,
  max,
  min,
  none,
  personDecides,
  pores,
  sum,
  times,
} from "./parts";
import { unitsSetting } from "./d1-1";

/** A set with the one edition its figures are known from. */
type OneEdition = Omit<CriteriaSet, "family">;

/** A row of a set: clause, how sure, what it is about, the tests. */
function rowsOf(id: string, document: DocumentId, edition: string) {
  const source = (clause: string, confidence: Confidence, note?: string): Source =>
    cite(document, confidence, { edition, clause, ...(note === undefined ? {} : { note }) });
  const variant = (
    clause: string,
    confidence: Confidence,
    when: readonly Condition[],
    ...tests: readonly Test[]
  ): Variant => ({ when, tests, source: source(clause, confidence) });
  const row = (
    name: string,
    title: string,
    imperfections: readonly ImperfectionId[],
    variants: readonly Variant[],
    extra: Partial<Pick<Criterion, "onlyWhenRead" | "onlyWhenSeen">> = {},
  ): Criterion => ({
    id: `${id}-${name}`,
    clause: variants[0]?.source.clause ?? "",
    title,
    imperfections,
    variants,
    ...extra,
  });
  return { source, variant, row };
}

const thirtySecond = both(1, 1 / 32);
const girth: Condition = { seam: ["girth", "branch"] };
const longitudinal: Condition = { seam: ["longitudinal"] };

function qualification(): OneEdition {
  const id = "aws-d1-1-qualification";
  const { source, variant, row } = rowsOf(id, "aws-d1-1", "2020");
  const clause = "6.10.1";
  return {
    id,
    title: "AWS D1.1 welder qualification, visual",
    document: titleOf("aws-d1-1"),
    edition: "2020",
    weldKinds: ["fillet", "butt"],
    scope: [],
    scopeSource: source("6", "memory"),
    settings: [unitsSetting],
    criteria: [
      row("crack", "Cracks", cracks, [variant(clause, "seen-older", [], none)]),
      row(
        "crater",
        "Craters filled to the full cross section",
        ["open-crater"],
        [variant(clause, "seen-older", [], none)],
      ),
      row("fusion", "Fusion", ["lack-of-fusion"], [variant(clause, "memory", [], none)]),
      row(
        "overlap",
        "Face merges with the base metal, no overlap",
        ["overlap"],
        [variant(clause, "memory", [], none)],
      ),
      row(
        "undercut",
        "Undercut, depth",
        ["undercut"],
        [variant(clause, "seen-older", [], each("depth", thirtySecond))],
      ),
      row(
        "reinforcement",
        "Reinforcement of the face",
        ["convex-bead"],
        [variant(clause, "seen-older", [butt], atMost("reinforcement", both(3, 1 / 8)))],
      ),
      row(
        "root",
        "Penetration of the root",
        ["incomplete-penetration"],
        [variant(clause, "memory", [butt], none)],
      ),
      row(
        "root-concavity",
        "Root concavity, pipe",
        ["root-concavity"],
        [variant(clause, "memory", [butt, { seam: ["girth"] }], each("depth", both(2, 1 / 16)))],
      ),
      row(
        "melt-through",
        "Melt-through, pipe",
        ["excess-penetration"],
        [variant(clause, "memory", [butt, { seam: ["girth"] }], each("height", both(3, 1 / 8)))],
      ),
      row("burn-through", "Burn-through", ["burn-through"], [variant(clause, "common-practice", [], none)]),
      row("porosity", "Open pores", pores, [variant(clause, "memory", [], personDecides)]),
    ],
    notCovered: [
      { clause: "6.10.2 to 6.10.4", note: "Bend, break and macro-etch tests: this is the visual part only." },
      { clause: "6.10.1", note: "Fillet size and profile of the test piece are those of the procedure." },
    ],
  };
}

function sheet(): OneEdition {
  const id = "aws-d1-3";
  const { source, variant, row } = rowsOf(id, "aws-d1-3", "1998");
  return {
    id,
    title: "AWS D1.3 sheet steel",
    document: titleOf("aws-d1-3"),
    edition: "1998",
    weldKinds: ["fillet", "butt"],
    scope: [{ symbol: "t", upTo: both(4.8, 3 / 16) }],
    scopeSource: source("1", "seen"),
    settings: [unitsSetting],
    criteria: [
      row("crack", "Cracks", cracks, [variant("6", "memory", [], none)]),
      row("fusion", "Fusion", ["lack-of-fusion"], [variant("6", "memory", [], none)]),
      row(
        "undercut",
        "Undercut, total length (its depth is not measured)",
        ["undercut"],
        [
          variant("6.1.1.3", "seen", [], {
            test: "total",
            of: ["length"],
            window: null,
            limit: times(1 / 8, "L"),
          }),
        ],
      ),
      row(
        "melt-through",
        "Melt-through that leaves a hole",
        ["burn-through"],
        [variant("6.1.1.3", "seen", [], none)],
      ),
      row("overlap", "Overlap", ["overlap"], [variant("6", "memory", [], personDecides)]),
      row("porosity", "Open pores", pores, [variant("6", "memory", [], personDecides)]),
      row(
        "size",
        "Fillet under size",
        ["undersized"],
        [variant("6", "memory", [fillet], atMost("leg-shortfall", 0))],
      ),
    ],
    notCovered: [
      { clause: "6", note: "Reinforcement and convexity: no figure known to us." },
      { clause: "2", note: "Arc spot and arc seam welds are not carried." },
      { clause: "edition", note: "Figures of the 1998 edition; later ones are not carried." },
    ],
  };
}

function stainless(): OneEdition {
  const id = "aws-d1-6-static";
  const { source, variant, row } = rowsOf(id, "aws-d1-6", "2017");
  const table = "Table 8.1";
  const sheetEdge = both(5, 3 / 16);
  const inchThick = both(25, 1);
  return {
    id,
    title: "AWS D1.6 stainless, static",
    document: titleOf("aws-d1-6"),
    edition: "2017",
    weldKinds: ["fillet", "butt"],
    scope: [],
    scopeSource: source("1", "memory"),
    settings: [
      unitsSetting,
      {
        id: "undercutException",
        title: "Deeper undercut over a short length",
        choices: [
          { value: false, title: "not used" },
          { value: true, title: "1/16 in (2 mm) over 2 in (50 mm) in 12 in (300 mm)" },
        ],
        default: false,
        note: "For which thickness the exception holds is not known to us: check your copy before using it.",
      },
      undecided(
        "craters",
        "Craters of fillets",
        "Filled to the size that was asked for: in a weld laid larger a shallow crater may stay. Someone who has measured it says so.",
      ),
    ],
    criteria: [
      row("crack", "Cracks", cracks, [variant(`${table} (1)`, "seen", [], none)]),
      row("fusion", "Fusion", ["lack-of-fusion"], [variant(`${table} (2)`, "memory", [], none)]),
      row(
        "crater",
        "Craters filled",
        ["open-crater"],
        [
          variant(`${table} (3)`, "memory", [fillet, { setting: "craters", is: "accepted" }], allowed),
          variant(`${table} (3)`, "memory", [fillet, { setting: "craters", is: "undecided" }], personDecides),
          variant(`${table} (3)`, "memory", [], none),
        ],
      ),
      row("overlap", "Overlap", ["overlap"], [variant(table, "memory", [], none)]),
      row("burn-through", "Burn-through", ["burn-through"], [variant(table, "common-practice", [], none)]),
      row(
        "undersize",
        "Fillet under size, and for how much of its length",
        ["undersized"],
        [
          variant(table, "seen", [fillet], atMost("leg-shortfall", both(2, 1 / 16)), {
            test: "total",
            of: ["length"],
            window: null,
            limit: times(0.1, "L"),
            unless: "leg-shortfall",
          }),
        ],
      ),
      row(
        "undercut",
        "Undercut, depth",
        ["undercut"],
        [
          variant(table, "seen", [{ symbol: "t", below: sheetEdge }], each("depth", both(0.25, 0.01))),
          variant(
            table,
            "seen-part",
            [
              { symbol: "t", atLeast: sheetEdge, below: inchThick },
              { setting: "undercutException", is: true },
            ],
            each("depth", both(2, 1 / 16)),
            {
              test: "total",
              of: ["length"],
              window: both(300, 12),
              only: { size: "depth", bound: "above", value: thirtySecond },
              limit: min(both(50, 2), times(1 / 6, "L")),
            },
          ),
          variant(
            table,
            "seen",
            [{ symbol: "t", atLeast: sheetEdge, below: inchThick }],
            each("depth", thirtySecond),
          ),
          variant(table, "memory", [], personDecides),
        ],
      ),
      row("porosity", "Open pores", pores, [variant(table, "memory", [], personDecides)]),
      row("temper-colour", "Temper colour", ["temper-colour"], [variant(table, "memory", [], personDecides)]),
    ],
    notCovered: [
      {
        clause: `${table}, porosity and profile`,
        note: "No figure known to us, so a qualified person decides.",
      },
      {
        clause: `${table}, time`,
        note: "Martensitic and precipitation-hardening steels: not before 24 h at ambient temperature.",
      },
      {
        clause: `${table}, undersize`,
        note: "None at the ends of web-to-flange welds over twice the flange width.",
      },
    ],
  };
}

/** B31.3: height of the reinforcement by wall; Category D allows twice as much. */
function reinforcementBands(factor: 1 | 2): readonly (readonly [Condition, Constant])[] {
  const height = (
    bounds: Pick<Extract<Condition, { symbol: unknown }>, "upTo" | "above">,
    mm: number,
    inches: number,
  ): readonly [Condition, Constant] => [{ symbol: "t", ...bounds }, both(factor * mm, factor * inches)];
  return [
    height({ upTo: both(6, 1 / 4) }, 1.5, 1 / 16),
    height({ above: both(6, 1 / 4), upTo: both(13, 1 / 2) }, 3, 1 / 8),
    height({ above: both(13, 1 / 2), upTo: both(25, 1) }, 4, 5 / 32),
    height({ above: both(25, 1) }, 5, 3 / 16),
  ];
}

function processPiping(): OneEdition {
  const id = "asme-b31-3-normal";
  const { source, variant, row } = rowsOf(id, "asme-b31-3", "2016");
  const table = "Table 341.3.2";
  const bands = reinforcementBands(1);
  const small: Condition = { symbol: "t", upTo: both(5, 3 / 16) };
  return {
    id,
    title: "ASME B31.3 normal service, visual",
    document: titleOf("asme-b31-3"),
    edition: "2016",
    weldKinds: ["fillet", "butt"],
    scope: [],
    scopeSource: source("341", "memory"),
    settings: [unitsSetting],
    criteria: [
      row("crack", "Cracks", cracks, [variant(table, "seen", [], none)]),
      row("fusion", "Lack of fusion", ["lack-of-fusion"], [variant(table, "seen", [], none)]),
      row(
        "penetration",
        "Incomplete penetration, depth and length",
        ["incomplete-penetration"],
        [
          variant(table, "memory", [butt, longitudinal], none),
          variant(table, "seen", [butt, girth], each("depth", min(thirtySecond, times(0.2, "t"))), {
            test: "total",
            of: ["length"],
            window: both(150, 6),
            limit: both(38, 1.5),
          }),
        ],
      ),
      row(
        "undercut",
        "Undercut, depth",
        ["undercut"],
        [
          variant(table, "seen", [butt, longitudinal], none),
          variant(table, "seen", [], each("depth", min(thirtySecond, times(0.25, "t")))),
        ],
      ),
      row(
        "porosity",
        "Surface porosity and exposed slag",
        [...pores, "trapped-slag"],
        [
          variant(`${table} note 5`, "seen", [small], none),
          variant(`${table} note 5`, "seen", [], personDecides),
        ],
      ),
      row(
        "reinforcement",
        "Reinforcement",
        ["convex-bead"],
        bands.map(([band, limit]) => variant(table, "seen", [butt, band], atMost("reinforcement", limit))),
      ),
      row(
        "inside",
        "Protrusion inside",
        ["excess-penetration"],
        bands.map(([band, limit]) => variant(table, "seen", [butt, band], each("height", limit))),
      ),
      row(
        "root-concavity",
        "Joint with reinforcement at least as thick as the wall",
        ["root-concavity"],
        // Wall less the concavity plus the reinforcement may not be less than the wall.
        [variant(table, "seen", [butt], each("depth", times(1, "h")))],
      ),
      row("burn-through", "Burn-through", ["burn-through"], [variant(table, "common-practice", [], none)]),
    ],
    notCovered: [
      {
        clause: table,
        note: "Category D has a set of its own; severe cyclic and Category M service are not carried.",
      },
      { clause: "341.4", note: "Other examinations the code asks for are not replaced by sight." },
    ],
  };
}

function fluidServicePiping(): OneEdition {
  const id = "asme-b31-3-category-d";
  const { source, variant, row } = rowsOf(id, "asme-b31-3", "2016");
  const table = "Table 341.3.2";
  return {
    id,
    title: "ASME B31.3 Category D service, visual",
    document: titleOf("asme-b31-3"),
    edition: "2016",
    weldKinds: ["fillet", "butt"],
    scope: [],
    scopeSource: source("341", "memory"),
    settings: [unitsSetting],
    criteria: [
      row("crack", "Cracks", cracks, [variant(table, "memory", [], none)]),
      row(
        "undercut",
        "Undercut, depth",
        ["undercut"],
        [
          variant(
            `${table} (I)`,
            "seen",
            [],
            each("depth", min(both(1.5, 1 / 16), max(times(0.25, "t"), thirtySecond))),
          ),
        ],
      ),
      row(
        "reinforcement",
        "Reinforcement",
        ["convex-bead"],
        reinforcementBands(2).map(([band, limit]) =>
          variant(`${table} (M)`, "seen", [butt, band], atMost("reinforcement", limit)),
        ),
      ),
      row(
        "inside",
        "Protrusion inside",
        ["excess-penetration"],
        reinforcementBands(2).map(([band, limit]) =>
          variant(`${table} (M)`, "seen", [butt, band], each("height", limit)),
        ),
      ),
      row("burn-through", "Burn-through", ["burn-through"], [variant(table, "common-practice", [], none)]),
      row(
        "others",
        "Fusion, penetration, pores, slag, root concavity",
        ["lack-of-fusion", "incomplete-penetration", ...pores, "trapped-slag", "root-concavity"],
        [variant(table, "memory", [], personDecides)],
      ),
    ],
    notCovered: [
      {
        clause: table,
        note: "Fusion, penetration and pores: no figure known to us, so a qualified person decides.",
      },
    ],
  };
}

function pipeline(): OneEdition {
  const id = "api-1104";
  const { source, variant, row } = rowsOf(id, "api-1104", "20th, 2005");
  const deepest = min(both(0.8, 1 / 32), times(0.125, "t"));
  const shallow = min(both(0.4, 1 / 64), times(0.06, "t"));
  const over = { size: "depth", bound: "above", value: shallow } as const;
  return {
    id,
    title: "API 1104 production girth weld, visual",
    document: titleOf("api-1104"),
    edition: "20th, 2005",
    weldKinds: ["butt"],
    scope: [],
    scopeSource: source("9", "memory"),
    settings: [
      unitsSetting,
      {
        id: "shallowCraterCracks",
        title: "Shallow crater and star cracks",
        choices: [
          { value: false, title: "refused like any crack" },
          { value: true, title: "up to 5/32 in (4 mm) may stay" },
        ],
        default: false,
        note: "The code lets shallow ones up to 5/32 in stay; that they are shallow, sight alone does not show.",
      },
    ],
    criteria: [
      row("crack", "Cracks", cracksOutsideCraters, [variant("9.3.10", "seen-part", [], none)]),
      row(
        "crater-crack",
        "Crater and star cracks, length",
        ["crater-crack"],
        [
          variant(
            "9.3.10",
            "seen-part",
            [{ setting: "shallowCraterCracks", is: true }],
            each("length", both(4, 5 / 32)),
          ),
          variant("9.3.10", "seen-part", [], none),
        ],
      ),
      row(
        "undercut-depth",
        "Undercut, depth",
        ["undercut"],
        [variant("9.7.2", "memory", [], each("depth", deepest))],
      ),
      row(
        "undercut-length",
        "Undercut deeper than the shallow limit, length",
        ["undercut"],
        [
          variant(
            "9.7.2, 9.3.11",
            "seen-part",
            [],
            { test: "total", of: ["length"], window: both(300, 12), only: over, limit: both(50, 2) },
            {
              test: "total",
              of: ["length"],
              window: null,
              only: over,
              limit: times(1 / 6, "L"),
            },
          ),
        ],
      ),
      row(
        "others",
        "Fusion, penetration, burn-through, porosity",
        ["lack-of-fusion", "incomplete-penetration", "burn-through", ...pores],
        [variant("9.3", "memory", [], personDecides)],
      ),
    ],
    notCovered: [
      {
        clause: "9.3.1 to 9.3.9",
        note: "Lengths allowed for fusion, penetration, burn-through and porosity are not carried.",
      },
      { clause: "9.3", note: "Most of the clause judges radiographs; here only what sight and gauge tell." },
    ],
  };
}

function pipelineWelder(): OneEdition {
  const id = "api-1104-welder-test";
  const { source, variant, row } = rowsOf(id, "api-1104", "20th, 2005");
  return {
    id,
    title: "API 1104 welder test, visual",
    document: titleOf("api-1104"),
    edition: "20th, 2005",
    weldKinds: ["butt", "fillet"],
    scope: [],
    scopeSource: source("6", "memory"),
    settings: [unitsSetting],
    criteria: [
      row("crack", "Cracks", cracks, [variant("6.4", "memory", [], none)]),
      row("penetration", "Penetration", ["incomplete-penetration"], [variant("6.4", "memory", [butt], none)]),
      row("burn-through", "Burn-through", ["burn-through"], [variant("6.4", "memory", [], none)]),
      row(
        "undercut",
        "Undercut at the cover, depth and length",
        ["undercut"],
        [
          variant("6.4", "seen-older", [], each("depth", min(both(0.8, 1 / 32), times(0.125, "t"))), {
            test: "total",
            of: ["length"],
            window: both(300, 12),
            limit: both(50, 2),
          }),
        ],
      ),
      row(
        "others",
        "Fusion, overlap, pores: a neat workmanlike appearance",
        ["lack-of-fusion", "overlap", ...pores],
        [variant("6.4", "memory", [], personDecides)],
      ),
    ],
    notCovered: [{ clause: "6.5", note: "Destructive tests: this is the visual part only." }],
  };
}

function vesselThinning(): OneEdition {
  const id = "asme-viii-1-uw-35";
  const { source, variant, row } = rowsOf(id, "asme-viii-1", "2007");
  return {
    id,
    title: "ASME VIII-1 UW-35, thinning by welding",
    document: titleOf("asme-viii-1"),
    edition: "2007",
    weldKinds: ["butt"],
    scope: [],
    scopeSource: source("UW-35", "seen"),
    settings: [unitsSetting],
    criteria: [
      row(
        "thinning",
        "Reduction in thickness, depth",
        ["undercut"],
        [variant("UW-35", "seen", [], each("depth", min(both(0.8, 1 / 32), times(0.1, "t"))))],
      ),
      row("crack", "Cracks", cracks, [variant("UW-35", "memory", [], none)]),
      row(
        "others",
        "Fusion, overlap, pores, craters",
        ["lack-of-fusion", "overlap", "open-crater", ...pores],
        [variant("UW-35", "memory", [], personDecides)],
      ),
    ],
    notCovered: [
      { clause: "UW-35", note: "The wall must also keep its required thickness: not known here." },
      { clause: "UW-35, reinforcement", note: "Reinforcement and misalignment tables are not carried." },
    ],
  };
}

function federalPiping(): OneEdition {
  const id = "ufgs-15216n";
  const { source, variant, row } = rowsOf(id, "ufgs-15216n", "undated");
  const clause = "3.5.1";
  return {
    id,
    title: "UFGS 15216N piping, visual",
    document: titleOf("ufgs-15216n"),
    edition: "undated",
    weldKinds: ["fillet", "butt"],
    scope: [],
    scopeSource: source("3.5", "seen"),
    settings: [unitsSetting],
    criteria: [
      row("crack", "Cracks", cracks, [variant(clause, "seen", [], none)]),
      row("fusion", "Surface lack of fusion", ["lack-of-fusion"], [variant(clause, "seen", [], none)]),
      row(
        "penetration",
        "Incomplete penetration where it can be seen",
        ["incomplete-penetration"],
        [variant(clause, "seen", [butt], none)],
      ),
      row(
        "undercut",
        "Undercut, depth",
        ["undercut"],
        [variant(clause, "seen", [], each("depth", thirtySecond))],
      ),
      row(
        "convexity",
        "Convexity of a fillet",
        ["convex-bead"],
        [variant(`${clause} f`, "seen", [fillet], atMost("convexity", sum(times(0.1, "m"), both(1, 0.03))))],
      ),
      row(
        "size",
        "Fillet not under size",
        ["undersized"],
        [variant(clause, "seen", [fillet], atMost("leg-shortfall", 0))],
      ),
      row(
        "greatest-size",
        "Fillet not over 1.25 times the least leg",
        [],
        [variant(clause, "seen", [fillet], atMost("leg-greatest", times(1.25, "z")))],
        { onlyWhenRead: true },
      ),
      row(
        "others",
        "Pores, slag, overlap, burn-through",
        [...pores, "trapped-slag", "overlap", "burn-through"],
        [variant("3.5.2", "memory", [], personDecides)],
      ),
    ],
    notCovered: [
      { clause: "3.5.2", note: "Rounded indications (count, spacing): found with particles or penetrant." },
    ],
  };
}

/** ASME IX QW-194: what a performance test coupon has to show before it is bent or radiographed. */
function boilerWelder(): OneEdition {
  const id = "asme-ix-qw-194";
  const { source, variant, row } = rowsOf(id, "asme-ix", "2021");
  const clause = "QW-194";
  return {
    id,
    title: "ASME IX QW-194 welder test, visual",
    document: titleOf("asme-ix"),
    edition: "2021",
    weldKinds: ["butt"],
    scope: [],
    scopeSource: source(clause, "memory"),
    settings: [],
    criteria: [
      row("crack", "Cracks", cracks, [variant(clause, "memory", [], none)]),
      row(
        "fusion",
        "Complete fusion of weld and base metal",
        ["lack-of-fusion"],
        [variant(clause, "memory", [], none)],
      ),
      row(
        "penetration",
        "Complete joint penetration",
        ["incomplete-penetration"],
        [variant(clause, "memory", [], none)],
      ),
      row(
        "others",
        "Everything else that shows",
        [...pores, "undercut", "overlap", "underfill", "root-concavity", "burn-through", "open-crater"],
        [variant(clause, "memory", [], personDecides)],
      ),
    ],
    notCovered: [
      {
        clause,
        note: "It sets no size for undercut, pores or reinforcement: whoever runs the test decides.",
      },
      {
        clause: "QW-160, QW-191",
        note: "Bend tests and volumetric examination: this is the visual part only.",
      },
      { clause: "QW-180", note: "Fillet weld tests are judged by fracture and macro and are not carried." },
      { clause: "edition", note: "From memory of the 2021 edition; a new one appears every other year." },
    ],
  };
}

/** ISO 10042 at level B, as far as known: no figures, only what is refused at any size. */
function aluminium(): OneEdition {
  const id = "iso-10042-b";
  const { source, variant, row } = rowsOf(id, "iso-10042", "2018");
  const table = "Table 1";
  return {
    id,
    title: "ISO 10042 aluminium, level B",
    document: titleOf("iso-10042"),
    edition: "2018",
    weldKinds: ["fillet", "butt"],
    scope: [],
    scopeSource: source("1", "memory"),
    settings: [],
    criteria: [
      row("crack", "Cracks", cracks, [variant(table, "memory", [], none)]),
      row("fusion", "Lack of fusion", ["lack-of-fusion"], [variant(table, "memory", [], none)]),
      row(
        "others",
        "Everything with a size",
        [
          ...pores,
          "undercut",
          "overlap",
          "underfill",
          "root-concavity",
          "incomplete-penetration",
          "excess-penetration",
          "burn-through",
          "open-crater",
          "convex-bead",
          "uneven-legs",
          "undersized",
          "oversized",
          "misalignment",
          "poor-start",
          "arc-strike",
          "spatter",
        ],
        [variant(table, "memory", [], personDecides)],
      ),
    ],
    notCovered: [
      {
        clause: table,
        note: "No figure is known to us: sizes, and readings of throat, convexity or reinforcement, are for a qualified person.",
      },
      {
        clause: "Table 1, levels C and D",
        note: "Not carried: what they allow of craters and fusion is not known to us.",
      },
    ],
  };
}

/** Sets carried as far as their figures are known; what is not known is left to a qualified person, never waved through. */
export const furtherSets: readonly OneEdition[] = [
  boilerWelder(),
  aluminium(),
  qualification(),
  sheet(),
  stainless(),
  processPiping(),
  fluidServicePiping(),
  pipeline(),
  pipelineWelder(),
  vesselThinning(),
  federalPiping(),
];
