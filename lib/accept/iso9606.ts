import type { Source } from "@/lib/base";
import { cite, titleOf } from "@/lib/trade";
import { bookOf } from "./edition";
import { atLevel, isoSettings } from "./iso5817";
import type { Criterion, CriteriaBook } from "./rule";
import { isoItems, type IsoItem, type IsoLevel, type IsoVariant } from "./tables/iso5817-items";
import type { CriteriaSetting } from "./verdict";

const edition = "2012";
/** Test pieces were held to this edition of ISO 5817 when the figures were written down. */
const figuresOf = "2014";

/**
 * Items of ISO 5817 that a test piece need meet at level C only: undercut (501), excess weld metal (502), excessive
 * convexity (503), excess penetration (504), excessive throat (5214). From memory.
 */
const atLevelC: ReadonlySet<string> = new Set(["1.7", "1.9", "1.10", "1.11", "1.21"]);

const shrinkageGroove: CriteriaSetting = {
  id: "shrinkageGroove",
  title: "Undercut at the root (shrinkage groove)",
  choices: [
    { value: "B", title: "held to level B" },
    { value: "C", title: "counted as undercut: level C" },
  ],
  default: "B",
  note: "ISO 6520-1 numbers it 5013, under undercut (501); whether clause 7 means it too, your copy or examiner says.",
};

function criterion({ item, editions, ...rest }: IsoItem): Criterion {
  const variants = editions.find(({ from }) => from === figuresOf)?.variants ?? [];
  const at = (level: IsoLevel, list: readonly IsoVariant[]): Criterion["variants"] =>
    atLevel(list, level, () => source(item, level));
  const asked: readonly IsoVariant[] = variants.map((variant) => ({
    ...variant,
    when: [...variant.when, { setting: shrinkageGroove.id, is: "C" }],
  }));
  return {
    ...rest,
    id: `iso-9606-1-${item}-${rest.id}`,
    clause: `7 with ISO 5817 ${item}`,
    variants:
      item === "1.8"
        ? [...at("C", asked), ...at("B", variants)]
        : at(atLevelC.has(item) ? "C" : "B", variants),
  };
}

function source(item: string, level: IsoLevel): Source {
  return cite("iso-9606-1", "memory", {
    edition,
    clause: `7 with ISO 5817 ${item}, level ${level}`,
    note: `which level clause 7 asks for is from memory; figure of ISO 5817:${figuresOf}`,
  });
}

/** The visual part of a welder's test: ISO 5817 level B, with a few items at level C. */
export const iso9606Book: CriteriaBook = bookOf({
  id: "iso-9606-1",
  title: "ISO 9606-1 welder test, visual",
  document: titleOf("iso-9606-1"),
  edition,
  weldKinds: ["fillet", "butt"],
  scope: [{ symbol: "t", atLeast: 0.5 }],
  scopeSource: cite("iso-9606-1", "memory", { edition, clause: "1" }),
  settings: [...isoSettings("B"), shrinkageGroove],
  criteria: isoItems.map(criterion),
  notCovered: [
    { clause: "6", note: "Bend, fracture, macro and radiographic tests: this is the visual part only." },
    {
      clause: "5",
      note: "What a passed test qualifies for, and for how long, is for the examiner or examining body.",
    },
    {
      clause: "7",
      note: "Clause 7 names ISO 5817 without a year as far as known to us; the figures are those of 2014.",
    },
    { clause: "edition", note: "The EN editions of 2013 and 2017 are taken to say the same; from memory." },
  ],
});
