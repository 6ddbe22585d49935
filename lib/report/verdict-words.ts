import type { GaugeId, MissingQuantity, MissingReading, RowReason, RowResult, Verdict } from "@/lib/accept";
import { forEachQuantity, quantityInText } from "@/lib/measure";
import { numberRanges } from "./mark-rows";

/** Words of the verdict, one table per code. Screens and sheets say the same thing because they ask here. */
export const verdictWords: Readonly<
  Record<Verdict["verdict"], { readonly short: string; readonly long: string }>
> = {
  accept: {
    short: "Meets the criteria",
    long: "Every clause that applies is met by what was read. Acceptance itself is for the person qualified to give it.",
  },
  reject: { short: "Does not meet", long: "At least one clause is not met. The worst stands first." },
  "cannot-say": {
    short: "Cannot say yet",
    long: "Nothing read so far fails, but some clauses are open. The readings below would settle them.",
  },
};

/** The word of a verdict as it is shown: while nobody has looked, there is none. */
export function verdictSays(verdict: Pick<Verdict, "verdict" | "lookedAt">): {
  readonly short: string;
  readonly long: string;
} {
  return verdict.lookedAt || verdict.verdict === "reject" ? verdictWords[verdict.verdict] : notLookedAt;
}

const notLookedAt = {
  short: "Not looked at yet",
  long: "Nothing is marked, ticked or read. Mark what you see, and tick what you looked for and did not find.",
} as const;

export const resultWords: Readonly<Record<RowResult, string>> = {
  fails: "Not met",
  open: "Open",
  meets: "Met",
  "not-applicable": "Does not apply",
};

export const reasonWords: Readonly<Record<RowReason, string>> = {
  "none-allowed": "none is allowed, and it is marked",
  "none-found": "looked for, none found",
  "none-together": "no two are marked in one cross section",
  "within-limit": "within the limit",
  "over-limit": "beyond the limit",
  "straddles-limit": "its uncertainty reaches across the limit",
  "readings-disagree": "the readings cannot stand together",
  "reading-missing": "a reading is missing",
  "weld-fact-missing": "it depends on what is not stated of the weld",
  "not-looked-for": "nobody has said they looked for it",
  "does-not-apply": "does not apply to this weld",
  allowed: "allowed by this level",
  "qualified-person-decides": "no number: a qualified person decides",
};

export const missingWords: Readonly<Record<MissingQuantity, string>> = {
  depth: "depth",
  height: "height",
  diameter: "diameter",
  length: "length",
  "place-along": "place along the weld",
  "largest-pore": "diameter of the largest pore",
  "pore-count": "number of pores",
  ...forEachQuantity(quantityInText),
  "root-width": "width of the root on the back",
  "undersize-length": "length that is under size",
  thickness: "thickness of the thinner part",
  "specified-throat": "throat asked for",
  "specified-leg": "leg asked for",
  "single-sided": "whether it is welded from one side only",
  "complete-penetration": "whether complete penetration is asked for",
  "transverse-to-tension": "whether it lies across the tensile stress",
  "stiffener-to-web": "whether it joins a stiffener to a web",
  "lap-edge": "whether it runs along the edge of the lapped plate",
  seam: "which seam it is",
  "weld-kind": "what kind of weld it is",
  look: "a look",
};

export const gaugeWords: Readonly<Record<GaugeId, string>> = {
  "undercut-gauge": "undercut gauge",
  "fillet-gauge": "fillet gauge",
  "throat-gauge": "throat gauge",
  "cap-gauge": "cap height gauge",
  "misalignment-gauge": "misalignment gauge",
  calliper: "calliper",
  rule: "rule",
  protractor: "protractor",
  "feeler-gauge": "feeler gauge",
  magnifier: "magnifier, 2 to 5 times",
  eye: "your eye, within 600 mm and not under 30 degrees (ISO 17637)",
  drawing: "the drawing or the procedure",
};

/** "depth of marks 3, 5–7, with an undercut gauge": one sentence for each quantity and gauge, in the order given. */
export function missingSentences(
  all: readonly MissingReading[],
  markNumber: (id: string) => number | null,
): readonly string[] {
  const groups = new Map<string, { readonly one: MissingReading; readonly numbers: Set<number> }>();
  for (const one of all) {
    const key = `${one.quantity} ${one.gauge}`;
    const group = groups.get(key) ?? { one, numbers: new Set<number>() };
    const number = one.observationId === null ? null : markNumber(one.observationId);
    if (number !== null) group.numbers.add(number);
    groups.set(key, group);
  }
  return [...groups.values()].map(({ one, numbers }) => missingText(one, [...numbers]));
}

function missingText({ quantity, gauge }: MissingReading, numbers: readonly number[]): string {
  const marks =
    numbers.length === 0
      ? ""
      : ` ${quantity === "look" ? "at" : "of"} mark${numbers.length === 1 ? "" : "s"} ${numberRanges(numbers)}`;
  const what = missingWords[quantity] + marks;
  const name = gaugeWords[gauge];
  if (gauge === "drawing") return `${what}, from ${name}`;
  const article = gauge === "eye" ? "" : /^[aeiou]/.test(name) ? "an " : "a ";
  return `${what}, with ${article}${name}`;
}
