import type { Confidence, Source } from "@/lib/base";
import { undecided } from "./settings";
import type { Condition, CriteriaSet, Criterion } from "./rule";
import { isoItems, type IsoItem, type IsoLevel } from "./tables/iso5817-items";

const edition = "2014";
const document = "ISO 5817";

const notes: Partial<Record<Confidence, string>> = {
  "seen-older": "figure known from the 2003 or 1992 text or an undated extract",
  "seen-part": "figure known from a text that was cut at this point",
  memory: "figure from memory",
};

function source(clause: string, confidence: Confidence): Source {
  const note = notes[confidence];
  return { document, edition, clause, confidence, ...(note === undefined ? {} : { note }) };
}

function criterion({ item, ...rest }: IsoItem, level: IsoLevel): Criterion {
  const clause = `Table 1, ${item}`;
  return {
    ...rest,
    id: `iso-${level.toLowerCase()}-${item}-${rest.id}`,
    clause,
    // Only level D leaves arc strikes to a decision; the others go straight to the last variant.
    variants: rest.variants
      .filter(({ when }) => level === "D" || !asksForArcStrikes(when))
      .map(({ when, [level]: [confidence, ...tests] }) => ({
        when,
        tests,
        source: source(clause, confidence),
      })),
  };
}

function asksForArcStrikes(when: readonly Condition[]): boolean {
  return when.some((condition) => "setting" in condition && condition.setting === "arcStrikes");
}

/** ISO 5817 at one quality level. */
function level(name: IsoLevel): CriteriaSet {
  return {
    id: `iso-5817-${name.toLowerCase()}`,
    title: `ISO 5817 level ${name}`,
    document,
    edition,
    weldKinds: ["fillet", "butt", "surfacing"],
    scope: [{ symbol: "t", atLeast: 0.5 }],
    scopeSource: source("1", "seen-older"),
    settings: [
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
      ...(name === "D"
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
    ],
    criteria: isoItems.map((item) => criterion(item, name)),
    notCovered: [
      { clause: "Table 1, 2.1 to 2.13", note: "Internal imperfections: not seen from outside." },
      { clause: "Table 1, 3.2", note: "Judged only when a root gap reading is entered." },
      { clause: "Table 1, 4.2", note: "Summed area along the weld: figure not sure enough to judge by." },
      { clause: "5", note: "Systematic imperfections are for the person who knows the whole production." },
      { clause: "1", note: "Surfacing welds are outside the standard; judged by the butt items by analogy." },
      { clause: "edition", note: "The 2023 edition's figures are not carried here." },
    ],
  };
}

export const iso5817Sets: readonly CriteriaSet[] = [level("B"), level("C"), level("D")];
