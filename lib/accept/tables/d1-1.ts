import type { Confidence, Source } from "@/lib/base";
import { cite, titleOf } from "@/lib/trade";
import type { Condition, Criterion, Test } from "../rule";
import type { CriteriaSetting } from "../verdict";
import { undecided } from "../settings";
import {
  allowed,
  atLeast,
  atMost,
  both,
  butt,
  cracks,
  each,
  fillet,
  min,
  none,
  orPerson,
  personDecides,
  pores,
  sum,
  times,
} from "./parts";

/** The edition in which these figures begin for us. Those of a later one are appended, see `DatedCriterion`. */
export const edition = "2020";
export const document = titleOf("aws-d1-1");

const notes: Partial<Record<Confidence, string>> = {
  "seen-older": "figure known from Table 6.1 of the 2000 to 2015 editions",
  "seen-part": "figure known in part, the rest from memory",
  memory: "figure from memory",
};

export function d11Source(clause: string, confidence: Confidence, note?: string): Source {
  const words = note ?? notes[confidence];
  return cite("aws-d1-1", confidence, { edition, clause, ...(words === undefined ? {} : { note: words }) });
}

const always = (source: Source, ...tests: readonly Test[]): Criterion["variants"] => [
  { when: [], tests, source },
];

export const unitsSetting: CriteriaSetting = {
  id: "units",
  title: "Units of the code",
  choices: [
    { value: "si", title: "SI (D1.1M)" },
    { value: "us", title: "US customary (D1.1)" },
  ],
  default: "si",
  note: "The two systems differ a little and are applied independently; the contract says which.",
};

export const d11Settings: readonly CriteriaSetting[] = [
  unitsSetting,
  {
    id: "intermittentEnds",
    title: "Ends of intermittent fillets beyond their effective length",
    choices: [
      { value: "judged", title: "judged like the rest" },
      { value: "exempt", title: "craters there are exempt" },
    ],
    default: "judged",
    note: "Table 8.1 (3) exempts craters at the ends of intermittent fillets outside their effective length.",
  },
  {
    id: "poresArePiping",
    title: "Open pores",
    choices: [
      { value: true, title: "all taken as piping porosity" },
      { value: false, title: "shown not to be piping" },
    ],
    default: true,
    note: "The table limits piping porosity only, and a look from above cannot tell it from other pores.",
  },
  {
    id: "lapEdge",
    title: "Leg along a lap edge",
    choices: [
      { value: "as-welded", title: "as welded: the size can be seen and verified" },
      { value: "detailing", title: "hold it to the limit for the drawing" },
    ],
    default: "as-welded",
    note: "Clause 4.4.2 limits what the drawing may ask for; as welded the toe may come closer to the edge where the size can be verified. From memory.",
  },
  undecided(
    "craters",
    "Craters of fillets",
    "Table 8.1 (3) asks that the specified size is filled: in a weld laid larger a shallow crater may stay. Someone who has measured it says so.",
  ),
  {
    id: "lapEdgeBuiltOut",
    title: "Lap edge on the drawing",
    choices: [
      { value: false, title: "the edge stays to be seen" },
      { value: true, title: "built out to full throat on the drawing" },
    ],
    default: false,
    note: "A drawing may ask for the edge to be built out; the leg may then reach it.",
  },
  undecided(
    "spatter",
    "Spatter",
    "Clause 7.29: tightly adherent spatter may stay unless it is in the way. From memory.",
  ),
];

/** Contested: may the deeper undercut be used on a weld shorter than 12 in (300 mm)? The code is silent. */
export const undercutShortWeld: CriteriaSetting = {
  id: "undercutShortWeld",
  title: "Deeper undercut on welds under 12 in (300 mm)",
  choices: [
    { value: "not-allowed", title: "not allowed" },
    { value: "prorated", title: "its length in proportion" },
  ],
  default: "not-allowed",
  note: "Contested: the code gives the length per 12 in and says nothing of shorter welds. Ask the Engineer.",
};

/** Contested: is the sum of pore diameters per 12 in taken in proportion on a shorter weld? */
export const porosityShortWeld: CriteriaSetting = {
  id: "porosityShortWeld",
  title: "Sum of pores on welds under 12 in (300 mm)",
  choices: [
    { value: "prorated", title: "in proportion to the length" },
    { value: "whole", title: "the full sum" },
  ],
  default: "prorated",
  note: "Contested: the code gives the sum per 12 in and says nothing of shorter welds. Ask the Engineer.",
};

/**
 * Does the 0.01 in undercut limit hold for every cyclically loaded weld? The table ties it to the direction of stress,
 * so that is the default: while the direction is not known, what lies between the two limits stays open.
 */
export const cyclicUndercut: CriteriaSetting = {
  id: "cyclicUndercut",
  title: "Undercut under cyclic loading",
  choices: [
    { value: "by-direction", title: "0.01 in transverse to tension in primary members, else 1/32 in" },
    { value: "everywhere", title: "0.01 in (0.25 mm) everywhere" },
  ],
  default: "by-direction",
  note: "The table ties 0.01 in to primary members, transverse to tensile stress; some guides apply it to every weld.",
};

/** How sure a row is that stands alike in Table 8.1 (seen) and in Table 10.15 (never seen). */
const inTable = (table: string, row: string): Source =>
  table === "Table 8.1"
    ? d11Source(`${table} ${row}`, "seen-older")
    : d11Source(`${table} ${row}`, "memory", "as in Table 8.1; that this table repeats it is from memory");

/** Cracks, fusion, craters: the same for every loading. */
export function soundness(prefix: string, table: string): readonly Criterion[] {
  return [
    {
      id: `${prefix}-1-crack`,
      clause: `${table} (1)`,
      title: "Cracks",
      imperfections: cracks,
      variants: always(inTable(table, "(1)"), none),
    },
    {
      id: `${prefix}-2-fusion`,
      clause: `${table} (2)`,
      title: "Fusion between layers and to the base metal",
      imperfections: ["lack-of-fusion"],
      variants: always(inTable(table, "(2)"), none),
    },
    {
      id: `${prefix}-2-penetration`,
      clause: `${table} (2)`,
      title: "Root of a complete joint penetration weld",
      imperfections: ["incomplete-penetration"],
      variants: [
        {
          when: [butt, { flag: "completePenetration", is: true }],
          tests: [none],
          source: d11Source(`${table} (2)`, "memory"),
        },
      ],
    },
    {
      id: `${prefix}-3-crater`,
      clause: `${table} (3)`,
      title: "Craters filled to the specified size",
      imperfections: ["open-crater"],
      variants: [
        {
          when: [fillet, { setting: "intermittentEnds", is: "exempt" }],
          tests: [allowed],
          source: inTable(table, "(3)"),
        },
        ...filletCraters(inTable(table, "(3)")),
        { when: [], tests: [none], source: inTable(table, "(3)") },
      ],
    },
  ];
}

/**
 * A fillet's crater has to be filled to the size that was asked for, not to the size that was laid; whether it is,
 * a depth alone does not tell.
 */
export function filletCraters(source: Source): Criterion["variants"] {
  return [
    { when: [fillet, { setting: "craters", is: "accepted" }], tests: [allowed], source },
    { when: [fillet, { setting: "craters", is: "refused" }], tests: [none], source },
    // What is left of the throat under the crater is at least the throat that was asked for.
    { when: [fillet], tests: [orPerson(each("depth", sum(times(1, "A"), times(-1, "a"))))], source },
  ];
}

const convexity = (
  bounds: Pick<Extract<Condition, { symbol: unknown }>, "upTo" | "above" | "below" | "atLeast">,
  limit: ReturnType<typeof both>,
  confidence: Confidence,
): Criterion["variants"][number] => ({
  when: [{ kind: ["fillet", "surfacing"] }, { symbol: "b", ...bounds }],
  tests: [atMost("convexity", limit)],
  source: d11Source("7.23, Table 7.9, Fig. 7.4", confidence),
});

const reinforcement = (
  bounds: Pick<Extract<Condition, { symbol: unknown }>, "upTo" | "above">,
  limit: ReturnType<typeof both>,
  confidence: Confidence,
): Criterion["variants"][number] => ({
  when: [butt, { symbol: "t", ...bounds }],
  tests: [atMost("reinforcement", limit)],
  source: d11Source("7.23, Table 7.9, Fig. 7.4", confidence),
});

/** Table 8.1 (4) with the profile clause. */
export function profiles(prefix: string): readonly Criterion[] {
  return [
    {
      id: `${prefix}-4-convexity`,
      clause: "7.23",
      title: "Convexity of a fillet or single bead",
      imperfections: ["convex-bead"],
      variants: [
        convexity({ upTo: both(8, 5 / 16) }, both(2, 1 / 16), "seen-part"),
        convexity({ above: both(8, 5 / 16), below: both(25, 1) }, both(3, 1 / 8), "seen-part"),
        convexity({ atLeast: both(25, 1) }, both(5, 3 / 16), "memory"),
      ],
    },
    {
      id: `${prefix}-4-reinforcement`,
      clause: "7.23",
      title: "Reinforcement of a butt weld",
      imperfections: ["convex-bead"],
      variants: [
        reinforcement({ upTo: both(25, 1) }, both(3, 1 / 8), "seen-part"),
        reinforcement({ above: both(25, 1), upTo: both(50, 2) }, both(5, 3 / 16), "seen-part"),
        reinforcement({ above: both(50, 2) }, both(6, 1 / 4), "memory"),
      ],
    },
    {
      id: `${prefix}-4-overlap`,
      clause: "7.23",
      title: "Overlap",
      imperfections: ["overlap"],
      variants: always(d11Source("7.23", "seen-older"), none),
    },
    {
      id: `${prefix}-4-burn-through`,
      clause: "7.23",
      title: "Burn-through",
      imperfections: ["burn-through"],
      variants: always(
        d11Source("7.23", "common-practice", "a hole is no acceptable profile; no item of its own"),
        none,
      ),
    },
    {
      id: `${prefix}-4-underfill`,
      clause: "7.23",
      title: "Underfilled groove",
      imperfections: ["underfill", "sagging"],
      variants: [{ when: [butt], tests: [none], source: d11Source("7.23", "memory") }],
    },
    {
      id: `${prefix}-4-misalignment`,
      clause: "7.21.3",
      title: "Linear misalignment of a butt joint",
      imperfections: ["misalignment"],
      variants: [
        {
          when: [butt],
          tests: [atMost("misalignment", min(times(0.1, "t"), both(3, 1 / 8)), true)],
          source: d11Source("7.21.3", "memory"),
        },
      ],
    },
  ];
}

const lapEdge: readonly Condition[] = [
  fillet,
  { flag: "alongLapEdge", is: true },
  { setting: "lapEdge", is: "detailing" },
];

/** Clause 7.21.1: a gap over this has the leg laid larger by as much, and over the other it is no joint to weld. */
const gapTakenOff = both(2, 1 / 16);
const greatestGap = both(5, 3 / 16);

/** Table 8.1 (6), and the least size of Table 7.7. */
export function filletSize(prefix: string, cyclic: boolean, table: string): readonly Criterion[] {
  const shortfall = (
    bounds: Pick<Extract<Condition, { symbol: unknown }>, "upTo" | "above" | "below" | "atLeast">,
    limit: ReturnType<typeof both>,
  ): Criterion["variants"][number] => ({
    when: [fillet, { symbol: "z", ...bounds }],
    tests: [
      { ...atMost("leg-shortfall", limit), lessGapOver: gapTakenOff },
      {
        test: "total",
        of: ["length"],
        window: null,
        limit: times(0.1, "L"),
        unless: "leg-shortfall",
      },
    ],
    source: inTable(table, "(6)"),
  });
  const floor = both(5, 3 / 16);
  const leastSize = (
    bounds: Pick<Extract<Condition, { symbol: unknown }>, "upTo" | "above">,
    size: ReturnType<typeof both>,
  ): Criterion["variants"][number] => ({
    when: [fillet, { symbol: "t", ...bounds }],
    // A fillet need not be larger than the thinner part.
    tests: [atLeast("leg-least", min(size, times(1, "t")))],
    source: d11Source("7.13, Table 7.7", "seen"),
  });
  const first = cyclic ? floor : both(3, 1 / 8);
  return [
    {
      id: `${prefix}-6-undersize`,
      clause: `${table} (6)`,
      title: "Fillet under size, and for how much of its length",
      imperfections: ["undersized"],
      variants: [
        shortfall({ upTo: both(5, 3 / 16) }, both(2, 1 / 16)),
        shortfall({ above: both(5, 3 / 16), below: both(8, 5 / 16) }, both(2.5, 3 / 32)),
        shortfall({ atLeast: both(8, 5 / 16) }, both(3, 1 / 8)),
      ],
    },
    {
      id: `${prefix}-root-gap`,
      clause: "7.21.1",
      title: "Root gap of a fillet",
      imperfections: ["wide-root-gap"],
      variants: [
        {
          when: [fillet],
          tests: [atMost("root-gap", greatestGap, true)],
          source: d11Source("7.21.1", "memory"),
        },
      ],
    },
    {
      id: `${prefix}-least-size`,
      clause: "7.13",
      title: "Least leg for the thickness (low-hydrogen process, single pass)",
      imperfections: [],
      variants: [
        leastSize({ upTo: both(6, 1 / 4) }, first),
        leastSize({ above: both(6, 1 / 4), upTo: both(12, 1 / 2) }, both(5, 3 / 16)),
        leastSize({ above: both(12, 1 / 2), upTo: both(20, 3 / 4) }, both(6, 1 / 4)),
        leastSize({ above: both(20, 3 / 4) }, both(8, 5 / 16)),
      ],
      onlyWhenRead: true,
    },
    {
      id: `${prefix}-lap-edge`,
      clause: "4.4.2",
      title: "Greatest leg along the edge of a lapped plate (limit for the drawing)",
      imperfections: [],
      variants: [
        {
          when: [
            ...lapEdge,
            { symbol: "t", atLeast: both(6, 1 / 4) },
            { setting: "lapEdgeBuiltOut", is: false },
          ],
          tests: [atMost("leg-greatest", sum(times(1, "t"), both(-2, -1 / 16)))],
          source: d11Source("4.4.2", "seen-older", "figure known from the 2015 edition, Fig. 2.1"),
        },
        {
          when: [...lapEdge, { symbol: "t", below: both(6, 1 / 4) }],
          tests: [atMost("leg-greatest", times(1, "t"))],
          source: d11Source("4.4.2", "memory"),
        },
      ],
      onlyWhenRead: true,
    },
  ];
}

/** Deeper than `deep` over at most 2 in of any 12 in, else `deep`: Table 8.1 (7)(A). */
export function undercutWithException(
  deep: ReturnType<typeof both>,
  deepest: ReturnType<typeof both>,
  source: Source,
  more: readonly Condition[],
): Criterion["variants"] {
  const over = { size: "depth", bound: "above", value: deep } as const;
  const window = both(300, 12);
  const total = (limit: Extract<Test, { test: "total" }>["limit"]): Test => ({
    test: "total",
    of: ["length"],
    window,
    only: over,
    limit,
  });
  const long: Condition = { symbol: "L", atLeast: window };
  const short: Condition = { symbol: "L", below: window };
  return [
    {
      when: [...more, short, { setting: "undercutShortWeld", is: "not-allowed" }],
      tests: [each("depth", deep)],
      source,
    },
    {
      when: [...more, short],
      tests: [each("depth", deepest), total(times(1 / 6, "L"))],
      source,
    },
    { when: [...more, long], tests: [each("depth", deepest), total(both(50, 2))], source },
  ];
}

const notPiping: Criterion["variants"][number] = {
  when: [{ setting: "poresArePiping", is: false }],
  tests: [allowed],
  source: d11Source("Table 8.1 (8)", "seen-older", "the table limits piping porosity only"),
};
const transverseButt: readonly Condition[] = [
  butt,
  { flag: "completePenetration", is: true },
  { flag: "transverseToTension", is: true },
];

function poreSums(source: Source, when: readonly Condition[]): Criterion["variants"] {
  const counted = { size: "diameter", bound: "at-least", value: both(1, 1 / 32) } as const;
  const per = (window: ReturnType<typeof both>, limit: Extract<Test, { test: "total" }>["limit"]): Test => ({
    test: "total",
    of: ["diameter", "length"],
    window,
    only: counted,
    limit,
  });
  const foot = both(300, 12);
  const inchSum = per(both(25, 1), both(10, 3 / 8));
  const full = both(20, 3 / 4);
  return [
    {
      when: [...when, { setting: "porosityShortWeld", is: "prorated" }],
      tests: [inchSum, per(foot, min(full, times({ si: 20 / 300, us: 0.75 / 12 }, "L")))],
      source,
    },
    { when, tests: [inchSum, per(foot, full)], source },
  ];
}

export const staticRows: readonly Criterion[] = [
  {
    id: "d1-1-static-7-undercut",
    clause: "Table 8.1 (7)(A)",
    title: "Undercut, depth and length",
    imperfections: ["undercut"],
    variants: [
      {
        when: [{ symbol: "t", atLeast: both(25, 1) }],
        tests: [each("depth", both(2, 1 / 16))],
        source: d11Source("Table 8.1 (7)(A)", "seen-older"),
      },
      ...undercutWithException(
        both(1, 1 / 32),
        both(2, 1 / 16),
        d11Source("Table 8.1 (7)(A)", "seen-older"),
        [{ symbol: "t", below: both(25, 1) }],
      ),
    ],
  },
  {
    id: "d1-1-static-8-porosity",
    clause: "Table 8.1 (8)(A)",
    title: "Piping porosity",
    imperfections: pores,
    variants: [
      notPiping,
      { when: transverseButt, tests: [none], source: d11Source("Table 8.1 (8)(A)", "seen-older") },
      ...poreSums(d11Source("Table 8.1 (8)(A)", "seen-older"), []),
    ],
  },
];

const frequency = (source: Source, when: readonly Condition[]): Criterion["variants"][number] => ({
  when,
  tests: [
    each(["diameter", "length"], both(2.5, 3 / 32)),
    { test: "total", of: "count", window: both(100, 4), limit: 1 },
  ],
  source,
});

export const cyclicRows: readonly Criterion[] = [
  {
    id: "d1-1-cyclic-7-undercut",
    clause: "Table 8.1 (7)(B)",
    title:
      "Undercut, depth: 0.25 mm (0.01 in) transverse to tension in a primary member, else 1 mm (1/32 in)",
    imperfections: ["undercut"],
    variants: [
      {
        when: [{ setting: "cyclicUndercut", is: "everywhere" }],
        tests: [each("depth", both(0.25, 0.01))],
        source: d11Source("Table 8.1 (7)(B)", "seen-older"),
      },
      {
        when: [{ flag: "transverseToTension", is: true }],
        tests: [each("depth", both(0.25, 0.01))],
        source: d11Source("Table 8.1 (7)(B)", "seen-older"),
      },
      {
        when: [],
        tests: [each("depth", both(1, 1 / 32))],
        source: d11Source("Table 8.1 (7)(B)", "seen-older"),
      },
    ],
  },
  {
    id: "d1-1-cyclic-8-porosity",
    clause: "Table 8.1 (8)(B), (8)(C)",
    title: "Piping porosity, size and frequency",
    imperfections: pores,
    variants: [
      notPiping,
      ...poreSums(d11Source("Table 8.1 (8)(B)", "memory"), [fillet, { flag: "stiffenerToWeb", is: true }]),
      frequency(d11Source("Table 8.1 (8)(B)", "seen-part"), [fillet]),
      { when: transverseButt, tests: [none], source: d11Source("Table 8.1 (8)(C)", "memory") },
      frequency(d11Source("Table 8.1 (8)(C)", "memory"), []),
    ],
  },
];

/** Neither shape nor soundness: what the rest of clause 7 says of the surface. */
export function surface(prefix: string): readonly Criterion[] {
  const strike = d11Source(
    "7.28",
    "memory",
    "cracks and blemishes from arc strikes are ground smooth and checked",
  );
  const spatter = d11Source("7.29", "memory");
  return [
    {
      id: `${prefix}-arc-strike`,
      clause: "7.28",
      title: "Arc strikes",
      imperfections: ["arc-strike"],
      variants: always(strike, personDecides),
    },
    {
      id: `${prefix}-spatter`,
      clause: "7.29",
      title: "Spatter",
      imperfections: ["spatter"],
      variants: [
        {
          when: [{ setting: "spatter", is: "accepted" }],
          tests: [allowed],
          source: spatter,
        },
        { when: [{ setting: "spatter", is: "refused" }], tests: [none], source: spatter },
        { when: [], tests: [personDecides], source: spatter },
      ],
    },
  ];
}

export const leastThickness = both(3, 1 / 8);
