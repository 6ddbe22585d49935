import type { Verdict } from "@/lib/accept";
import { proposal, type Assessed, type BeadContent, type PhotoFacts } from "@/lib/assess";
import { emptyRunSetup, type RunSetup } from "@/lib/setup";
import { imperfections, type ImperfectionId } from "@/lib/trade";
import type { UnitPreferences } from "@/lib/units";
import { changeText, type WordedChange } from "./amount-text";
import { setupLine } from "./setup-rows";

/** What the list shows of one bead. */
export interface BeadSummary {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  readonly welder: string | null;
  /** ISO 8601: whoever reads the list sees their own day. */
  readonly createdAt: string;
  readonly thumbSha256: string | null;
  readonly setupLine: string;
  /** Names of what is marked, each once, with its count when more than one. */
  readonly seen: readonly string[];
  readonly firstChange: string | null;
  readonly verdict: Verdict["verdict"] | null;
  /** What of it is being worked out anew and therefore not said: nothing, the advice, or all but its picture and title. */
  readonly again: "nothing" | "advice" | "all";
  /** Its record is there and cannot be read: nothing but its number and title is said. */
  readonly unreadable: boolean;
}

/** A bead as a list names it, whatever became of its assessment. */
export interface NamedBead {
  readonly id: string;
  readonly number: number;
  /** ISO 8601. */
  readonly createdAt: string;
  readonly title: string;
  readonly welder: string | null;
  readonly thumbSha256: string | null;
  readonly unreadable?: boolean;
}

/** What the set-up line is worded from. */
const lineFields = [
  "process",
  "electrodeClass",
  "electrodeDiameterMm",
  "joint",
  "position",
  "progression",
] as const satisfies readonly (keyof RunSetup)[];

/** What a card says of a bead beyond its name, before it is put into anybody's units; it can be kept. */
export interface BeadCard {
  readonly setup: Partial<RunSetup>;
  /** One for each mark, in the order of photos and marks. */
  readonly marks: readonly ImperfectionId[];
  /** The first change to try; null where nothing is to be cured. */
  readonly change: (WordedChange & { readonly sentence: string }) | null;
}

export interface SummarisableBead {
  readonly id: string;
  readonly number: number;
  /** ISO 8601. */
  readonly createdAt: string;
  readonly content: BeadContent;
  readonly photos: readonly PhotoFacts[];
}

export function beadCard({ content, assessment: { diagnosis } }: Assessed): BeadCard {
  const change = diagnosis.ok ? (proposal(diagnosis.value)?.first ?? null) : null;
  const known = lineFields.filter((field) => content.setup[field] !== null);
  return {
    setup: Object.fromEntries(known.map((field) => [field, content.setup[field]])),
    marks: content.photos.flatMap(({ drawing }) => drawing.marks.map(({ imperfection }) => imperfection)),
    change: change && worded(change),
  };
}

function worded(change: WordedChange & { readonly sentence: string }): BeadCard["change"] {
  const { sentence, quantity, unitKind, fromSi, toSi, stepSi, fromText, toText, direction } = change;
  return { sentence, quantity, unitKind, fromSi, toSi, stepSi, fromText, toText, direction };
}

/** The card of a bead in somebody's units. `said`: null where it is being worked out anew. */
export function summariseCard(
  bead: NamedBead,
  said: {
    readonly card: BeadCard;
    readonly verdict: BeadSummary["verdict"];
    /** Whether the advice stands; causes are weighed by the shop's own cases, a verdict is not. */
    readonly adviceStands: boolean;
  } | null,
  units: UnitPreferences,
): BeadSummary {
  const { id, number, title, welder, thumbSha256, createdAt } = bead;
  const change = said?.adviceStands ? said.card.change : null;
  return {
    id,
    number,
    title,
    welder,
    createdAt,
    thumbSha256,
    setupLine: said ? setupLine({ ...emptyRunSetup, ...said.card.setup }, units) : "",
    seen: said ? countNames(said.card.marks.map((id) => imperfections[id].name)) : [],
    firstChange: change && [change.sentence, changeText(change, units)].filter(Boolean).join(" "),
    verdict: said?.verdict ?? null,
    again: said === null ? "all" : said.adviceStands ? "nothing" : "advice",
    unreadable: bead.unreadable ?? false,
  };
}

export function summariseBead(bead: Assessed<SummarisableBead>, units: UnitPreferences): BeadSummary {
  const { id, number, createdAt, content, photos } = bead;
  const { verdict } = bead.assessment;
  const thumbSha256 = photos[0]?.sha256 ?? null;
  const named = { id, number, createdAt, title: content.title, welder: content.welder, thumbSha256 };
  const word = verdict?.ok ? verdict.value.verdict : null;
  return summariseCard(named, { card: beadCard(bead), verdict: word, adviceStands: true }, units);
}

function countNames(names: readonly string[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const name of names) counts.set(name, (counts.get(name) ?? 0) + 1);
  return [...counts].map(([name, count]) => (count > 1 ? `${name} × ${count}` : name));
}
