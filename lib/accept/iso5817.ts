import type { Confidence, Source } from "@/lib/base";
import { cite, titleOf } from "@/lib/trade";
import { undecided } from "./settings";
import type { BookEdition, Condition, CriteriaBook, DatedCriterion, Variant } from "./rule";
import { isoItems, type IsoItem, type IsoLevel, type IsoVariant } from "./tables/iso5817-items";
import type { CriteriaSetting } from "./verdict";

const document = titleOf("iso-5817");
const first = "2014";

const notes: Partial<Record<Confidence, string>> = {
  "seen-older": "figure known from the 2003 or 1992 text or an undated extract",
  "seen-part": "figure known from a text that was cut at this point",
  memory: "figure from memory",
};
const laterNotes: Partial<Record<Confidence, string>> = {
  "seen-older": `figure of the ${first} edition, taken over`,
  memory: "changed in this edition; the figure is from memory or not known to us",
};

function source(clause: string, edition: string, confidence: Confidence): Source {
  const note = (edition === first ? notes : laterNotes)[confidence];
  return cite("iso-5817", confidence, { edition, clause, ...(note === undefined ? {} : { note }) });
}

/** One item at one quality level. */
function criterion({ item, editions, ...rest }: IsoItem, level: IsoLevel): DatedCriterion {
  const clause = `Table 1, ${item}`;
  return {
    ...rest,
    id: `iso-${level.toLowerCase()}-${item}-${rest.id}`,
    clause,
    editions: editions.map(({ from, variants }) => ({
      from,
      variants:
        variants === null ? null : atLevel(variants, level, (confidence) => source(clause, from, confidence)),
    })),
  };
}

/** One column of Table 1. Only level D leaves arc strikes to a decision; the others go to the last variant. */
export function atLevel(
  variants: readonly IsoVariant[],
  level: IsoLevel,
  sourceOf: (confidence: Confidence) => Source,
): readonly Variant[] {
  return variants
    .filter(({ when }) => level === "D" || !asksForArcStrikes(when))
    .map(({ when, [level]: [confidence, ...tests] }) => ({ when, tests, source: sourceOf(confidence) }));
}

function asksForArcStrikes(when: readonly Condition[]): boolean {
  return when.some((condition) => "setting" in condition && condition.setting === "arcStrikes");
}

/** What Table 1 leaves to the use or to the drawing. */
export function isoSettings(level: IsoLevel): readonly CriteriaSetting[] {
  return [
    undecided(
      "spatter",
      "Spatter",
      "Table 1, 1.23 gives no number: material and corrosion protection decide.",
    ),
    undecided(
      "temperColour",
      "Temper colour",
      "Table 1, 1.24 gives no number: material and corrosion protection decide.",
    ),
    ...(level === "D"
      ? [
          undecided(
            "arcStrikes",
            "Arc strikes",
            "Level D allows them where the parent metal's properties are unaffected: someone qualified says so.",
          ),
        ]
      : []),
    {
      id: "unequalLegsAskedFor",
      title: "Unequal legs",
      choices: [
        { value: false, title: "not asked for" },
        { value: true, title: "asked for on the drawing" },
      ],
      default: false,
      note: "Item 1.16 applies where no asymmetry was specified.",
    },
  ];
}

const always: BookEdition["notCovered"] = [
  { clause: "Table 1, 2.1 to 2.13", note: "Internal imperfections: not seen from outside." },
  { clause: "Table 1, 4.2", note: "Summed area along the weld: figure not sure enough to judge by." },
  { clause: "5", note: "Systematic imperfections are for the person who knows the whole production." },
  { clause: "1", note: "Surfacing welds are outside the standard; judged by the butt items by analogy." },
];

const editions: readonly [BookEdition, ...BookEdition[]] = [
  {
    name: first,
    notCovered: [
      { clause: "Table 1, 3.2", note: "Judged only when a root gap reading is entered." },
      ...always,
      { clause: "edition", note: "A later edition appeared in 2023; it is a set of its own here." },
    ],
  },
  {
    name: "2023",
    notCovered: [
      {
        clause: "edition",
        note: "Nobody here has read the 2023 table. What summaries call unchanged keeps the 2014 figure: check every row against your copy.",
      },
      {
        clause: "Table 1, 1.3, 1.16",
        note: "For fillets the limit rests on the throat as laid; the factor is taken to be that of 2014. Beyond it a person decides.",
      },
      {
        clause: "Table 1, 1.4",
        note: "Whether a fillet's end crater is held to the throat as laid is not known to us: a person decides.",
      },
      {
        clause: "Table 1, 3.2",
        note: "A root gap that was read goes to a person: its limit rests on the throat as laid, figure not known to us.",
      },
      {
        clause: "Table 1, 4.1",
        note: "Changed; figure not known to us. Where two lie in one section, a person decides.",
      },
      { clause: "Annex B", note: "Deleted in this edition." },
      ...always,
    ],
  },
];

/** ISO 5817 at one quality level, in the editions carried. */
function level(name: IsoLevel): CriteriaBook {
  return {
    key: `iso-5817-${name.toLowerCase()}`,
    bareKeyMeans: first,
    title: `ISO 5817 level ${name}`,
    document,
    editions,
    weldKinds: ["fillet", "butt", "surfacing"],
    scope: [{ symbol: "t", atLeast: 0.5 }],
    scopeSource: source("1", first, "seen-older"),
    settings: isoSettings(name),
    criteria: isoItems.map((item) => criterion(item, name)),
  };
}

export const iso5817Books: readonly CriteriaBook[] = [level("B"), level("C"), level("D")];
