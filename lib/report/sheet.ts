import type { RowReason, Verdict, VerdictRow } from "@/lib/accept";
import {
  assessedPhotos,
  marksAcrossPhotos,
  proposal,
  type Assessed,
  type Assessment,
  type BeadContent,
  type NumberedMark,
  type PhotoRole,
} from "@/lib/assess";
import { isoNumberText } from "@/lib/trade";
import { countAbout, type Drawing } from "@/lib/marks";
import { changeText } from "./amount-text";
import { answerWords, type AnswerWords } from "./answer-words";
import { cautionLines } from "./caution-lines";
import { basisWords, otherCauseWords } from "./certainty-words";
import { paperOrigin, reasonsOf } from "./reasons";
import type { SummarisableBead } from "./bead-summary";
import { dayText } from "./day-text";
import { markAmountText, markLabel, markName, markPlace, scaleText } from "./mark-text";
import { numberRanges, sizeRange } from "./mark-rows";
import { setupRows, type LabelledRow } from "./setup-rows";
import { missingSentences, reasonWords, resultWords, verdictSays } from "./verdict-words";
import { invariant } from "@/lib/base";
import { basisOf, type Change, type DiagnoseInput, type Diagnosis, type RankedCause } from "@/lib/diagnose";
import type { UnitPreferences } from "@/lib/units";
import { looks } from "./look-words";
import { contradictionSentence } from "./contradiction-words";
import { notCarriedSentence } from "./not-carried-sentence";
import { codeUnitsOf, rowSentence, unusedSentence, type RowWords } from "./row-sentence";
import { findingLines } from "./finding-lines";
import type { SheetClause } from "./sheet-clause";
import { sheetSection, type SheetSection } from "./sheet-section";
import { acceptedProfile, widthRows } from "./width-rows";

export interface SheetMark {
  readonly photo: number;
  /** "3", or "4, 6–9" where several marks of one kind share a row. */
  readonly numbers: string;
  readonly name: string;
  readonly iso6520: string | null;
  readonly place: string;
  readonly size: string;
  readonly note: string;
}

export interface SheetCause {
  readonly name: string;
  readonly chance: string;
  readonly probability: number;
  readonly speaksFor: readonly string[];
  readonly speaksAgainst: readonly string[];
}

/** One bead as a plain tree of words, ready for paper. Nothing on it is computed again by whoever prints it. */
export interface SheetDocument {
  readonly number: number;
  readonly revision: number;
  readonly title: string;
  readonly welder: string | null;
  readonly day: string;
  readonly photos: readonly {
    readonly sha256: string;
    readonly role: PhotoRole;
    readonly widthPx: number;
    readonly heightPx: number;
    readonly drawing: Drawing;
    readonly hasScale: boolean;
    /** Words beside each mark's number, by mark id, as on the screen. */
    readonly labels: Readonly<Record<string, string>>;
    readonly scaleLabel: string;
    /** What was read of the bead's width along toes that somebody accepted; left out where there are none. */
    readonly width?: readonly LabelledRow[];
    /** Left out where the photo shows no cut weld, or nobody has worked on it. */
    readonly section?: SheetSection;
  }[];
  readonly setup: readonly LabelledRow[];
  readonly setupFindings: readonly string[];
  readonly marks: readonly SheetMark[];
  readonly inspectorFirst: boolean;
  readonly change: AnswerWords | null;
  readonly nextChanges: readonly string[];
  readonly causes: readonly SheetCause[];
  /** What their weights rest on; empty where none are listed. */
  readonly origin: string;
  /** What is marked and does not come from how the bead was run, a sentence each. */
  readonly causeless: readonly string[];
  readonly verdict: {
    readonly word: string;
    readonly long: string;
    readonly criteria: string;
    /** Some clause that decided rests on memory or an older edition. */
    readonly checkYourCopy: boolean;
    /** Readings that cannot stand together, a sentence each. */
    readonly contradictions: readonly string[];
    /** What was read and no clause went by; empty when everything was used. */
    readonly unused: string;
    /** Clauses the shop's own limits did not carry over; empty: none is known of. */
    readonly notCarried: string;
    readonly missing: readonly string[];
    readonly notLookedFor: readonly string[];
    readonly clauses: readonly SheetClause[];
  } | null;
  readonly note: string;
  readonly cautions: readonly string[];
}

export interface SheetBead extends SummarisableBead {
  readonly revision: number;
}

export function sheetDocument(bead: Assessed<SheetBead>, units: UnitPreferences): SheetDocument {
  const { content, assessment } = bead;
  const diagnosis = assessment.diagnosis.ok ? assessment.diagnosis.value : null;
  const marks = sheetMarks(content, assessment, units);
  const proposed = diagnosis && proposal(diagnosis);
  const verdict = assessment.verdict?.ok ? assessment.verdict.value : null;
  const listed = worthListing(diagnosis, proposed !== null).slice(0, 3);
  const from = diagnosis && { evidence: assessment.evidence, diagnosis };
  return {
    number: bead.number,
    revision: bead.revision,
    title: content.title,
    welder: content.welder,
    day: dayText(bead.createdAt),
    photos: sheetPhotos(bead, units),
    setup: setupRows(content.setup, units),
    setupFindings: findingLines(assessment.setup, units),
    marks,
    inspectorFirst: diagnosis?.cautions.some((caution) => caution.level === "stop") ?? false,
    change: from && proposed ? answerWords(from, proposed.first, units) : null,
    nextChanges: (proposed?.next ?? []).slice(0, 2).map((change) => fullStep(change, units)),
    causes: from === null ? [] : listed.map((cause, rank) => sheetCause(from, cause, rank, units)),
    origin: listed.length === 0 ? "" : paperOrigin(listed.flatMap(({ why }) => why.map((one) => one.source))),
    causeless: (diagnosis?.causeless ?? []).map(({ sentence }) => sentence),
    verdict: verdict && sheetVerdict(verdict, content, assessment, units),
    note: content.judgement.note,
    cautions: cautionLines(diagnosis),
  };
}

/** Where nothing but tool marks and the like is marked, a list of causes would be read as theirs. */
function worthListing(diagnosis: Diagnosis | null, isProposed: boolean): readonly RankedCause[] {
  if (diagnosis === null) return [];
  const { causes, causeless, explainable } = diagnosis;
  return causeless.length > 0 && explainable.length === 0 && !isProposed ? [] : causes;
}

function sheetPhotos(bead: Assessed<SheetBead>, units: UnitPreferences): SheetDocument["photos"] {
  const { content, assessment } = bead;
  const marks = marksAcrossPhotos(content, assessment.photos);
  return assessedPhotos(bead).map(({ photo, facts }) => {
    const { id, role, drawing } = photo;
    const { sha256, widthPx, heightPx } = facts;
    const labels = Object.fromEntries(
      marks
        .filter(({ photoId }) => photoId === id)
        .map(({ mark, measured }) => [mark.id, markLabel(mark, measured, units)]),
    );
    const scaleLabel = scaleText(drawing.scale, units);
    const section = sheetSection(content, facts, assessment, units);
    const found = assessment.photos.find(({ photoId }) => photoId === id);
    const profile = acceptedProfile(drawing, found?.calibration ?? null);
    return {
      sha256,
      role,
      widthPx,
      heightPx,
      drawing,
      hasScale: drawing.scale !== null,
      labels,
      scaleLabel,
      ...(profile ? { width: widthRows(profile, units, content.setup) } : {}),
      ...(section ? { section } : {}),
    };
  });
}

/** One row a mark; marks of one kind at one place without readings or notes share a row, or spatter would fill the page. */
function sheetMarks(
  content: BeadContent,
  assessment: Assessment,
  units: UnitPreferences,
): readonly SheetMark[] {
  const rows = new Map<string, NumberedMark[]>();
  for (const one of marksAcrossPhotos(content, assessment.photos)) {
    const { mark, photoId, key } = one;
    const alone = mark.gauge.length > 0 || mark.note !== "" || countAbout(mark) !== null;
    const row = alone ? key : [photoId, mark.imperfection, markPlace(mark)].join("|");
    rows.set(row, [...(rows.get(row) ?? []), one]);
  }
  return [...rows.values()].map((marks) => sheetMark(content, marks, units));
}

function sheetMark(content: BeadContent, marks: readonly NumberedMark[], units: UnitPreferences): SheetMark {
  const [first] = marks;
  invariant(first, "a row has a mark");
  const { mark, photoId, measured } = first;
  const count = marks.length > 1 ? ` × ${marks.length}` : "";
  return {
    photo: content.photos.findIndex(({ id }) => id === photoId) + 1,
    numbers: numberRanges(marks.map(({ number }) => number)),
    name: `${markName(mark)}${count}`,
    iso6520: isoNumberText(mark.imperfection, content.setup.joint),
    place: markPlace(mark),
    size:
      marks.length > 1
        ? sizeRange(
            marks.map((one) => one.measured),
            units,
          )
        : markAmountText(mark, measured, units),
    note: mark.note,
  };
}

/** "Lower the volts. Voltage from 29 V down to 25.5 V." */
function fullStep(change: Change, units: UnitPreferences): string {
  const step = changeText(change, units);
  return step === "" ? change.sentence : `${change.sentence} ${step}.`;
}

/** The first with what speaks most for and against it, the others with one reason. */
function sheetCause(
  { evidence, diagnosis }: { readonly evidence: DiagnoseInput; readonly diagnosis: Diagnosis },
  cause: RankedCause,
  rank: number,
  units: UnitPreferences,
): SheetCause {
  const { speaksFor, speaksAgainst } = reasonsOf(cause.why, units);
  const isFirst = rank === 0;
  return {
    name: cause.name,
    chance: isFirst ? basisWords[basisOf(evidence, diagnosis, cause.id)] : otherCauseWords(cause.probability),
    probability: cause.probability,
    speaksFor: isFirst ? speaksFor : speaksFor.slice(0, 1),
    speaksAgainst: isFirst ? speaksAgainst : speaksAgainst.slice(0, 1),
  };
}

function sheetVerdict(
  verdict: Verdict,
  content: BeadContent,
  assessment: Assessment,
  units: UnitPreferences,
): NonNullable<SheetDocument["verdict"]> {
  const numbers = new Map(
    marksAcrossPhotos(content, assessment.photos).map(({ key, number }) => [key, number]),
  );
  const markNumber = (id: string): number | null => numbers.get(id) ?? null;
  const said = verdictSays(verdict);
  return {
    word: said.short,
    long: said.long,
    contradictions: verdict.contradictions.map((one) => contradictionSentence(one, markNumber)),
    unused: unusedSentence(verdict, markNumber),
    notCarried: notCarriedSentence(verdict.notCarried),
    criteria: `${verdict.criteriaTitle}, ${verdict.edition}`,
    checkYourCopy: verdict.checkYourCopy,
    missing: missingSentences(
      verdict.missing.filter(({ quantity }) => quantity !== "look"),
      markNumber,
    ),
    notLookedFor: looks(verdict.notLookedFor).map(({ name }) => name),
    clauses: sheetClauses(verdict.rows, { units, codeUnits: codeUnitsOf(verdict), markNumber }),
  };
}

/** What nobody looked for stands in one line of its own; a clause each would bury the ones that were read. */
function isWorthALine(row: VerdictRow): boolean {
  return row.result !== "not-applicable" && row.reason !== "not-looked-for";
}

/**
 * Clauses that say the same thing share a line: those met because nothing was found, and those open for want of a
 * reading (which readings, the line "Missing" says). Every clause that compares a number keeps its own.
 */
const sharedReasons: readonly RowReason[] = ["reading-missing", "none-found"];

function sheetClauses(rows: readonly VerdictRow[], words: RowWords): readonly SheetClause[] {
  const shown = rows.filter(isWorthALine);
  const alone = shown
    .filter((row) => !sharedReasons.includes(row.reason))
    .map((row) => sheetClause(row, words));
  const shared = sharedReasons.flatMap((reason) =>
    sharedClause(shown.filter((row) => row.reason === reason)),
  );
  return [...alone, ...shared];
}

const readingsMissing = "readings are missing, named above with their gauges";

function sharedClause(rows: readonly VerdictRow[]): readonly SheetClause[] {
  const [first] = rows;
  if (!first) return [];
  const unique = (values: readonly string[]) => [...new Set(values)].join("; ");
  return [
    {
      result: resultWords[first.result],
      title: unique(rows.map(({ title }) => title)),
      detail: first.reason === "reading-missing" ? readingsMissing : reasonWords[first.reason],
      clause: unique(rows.map(({ clause }) => clause)),
      checkYourCopy: rows.some(({ checkYourCopy }) => checkYourCopy),
    },
  ];
}

function sheetClause(row: VerdictRow, words: RowWords): SheetClause {
  return {
    result: resultWords[row.result],
    title: row.title,
    detail: rowSentence(row, words),
    clause: row.clause,
    checkYourCopy: row.checkYourCopy,
  };
}
