import { listCriteria } from "@/lib/accept";
import { askedLegMm, judgedForAskedSize, shortOf } from "./asked-size";
import { extentText } from "./extent-text";
import { criteriaOf, type JobWeld } from "./job";
import { lengthIn, type PaperUnits } from "./paper-units";
import { certificateOn, qualificationText } from "./qualification";
import { readingDoubts, readingsByGauge } from "./reading-doubts";
import { readingRows } from "./reading-rows";
import type { SignedBead, SignedRecord } from "./signed-record";
import { weldExtent } from "./weld-results";

/** One thing that is asked of a weld, and what is there of it. */
export interface CheckRow {
  readonly what: string;
  readonly asked: string;
  readonly seen: string;
  /** Whether it leaves the weld nothing to wait for. */
  readonly isDone: boolean;
}

interface Looked {
  readonly record: SignedRecord;
  readonly weld: JobWeld;
  readonly beads: readonly SignedBead[];
  readonly units: PaperUnits;
}

/**
 * What is asked of a weld against what was seen, row by row. All rows are done where the weld is accepted; a fault that
 * was found leaves "Criteria" undone.
 */
export function weldChecklist(
  record: SignedRecord,
  weldId: string,
  units: PaperUnits = "both",
): readonly CheckRow[] {
  const weld = record.job.content.welds.find(({ id }) => id === weldId);
  if (!weld) return [];
  const looked = { record, weld, beads: record.beads.filter((bead) => bead.weldId === weldId), units };
  return [
    extentRow(looked),
    ...sizeRows(looked),
    criteriaRow(looked),
    ...verdictRows(looked),
    gaugeRow(looked),
    certificateRow(looked),
  ];
}

function extentRow({ record: { draft }, weld, units }: Looked): CheckRow {
  const { asked, askedNote, lengthMm } = weld;
  const seen = draft.welds.find(({ weldId }) => weldId === weld.id);
  return {
    what: "Extent",
    asked: extentText(asked, askedNote, lengthMm, units) || "not recorded",
    seen: extentText(seen?.seen ?? null, seen?.seenNote, lengthMm, units) || "not recorded",
    isDone: weldExtent(weld, draft).kind === "full",
  };
}

function sizeRows({ weld, beads, units }: Looked): readonly CheckRow[] {
  const mm = (value: number) => lengthIn(units, value);
  const read = beads.flatMap((bead) => readingRows(bead, units).map((row) => `${row.what} ${row.read}`));
  const of = (name: RegExp) => read.filter((words) => name.test(words)).join("; ") || "not read";
  const leg = askedLegMm(weld);
  const setFor = beads.map(({ setup }) => (setup.targetLegMm === null ? "no size" : mm(setup.targetLegMm)));
  return [
    {
      what: "Size",
      asked: leg === null ? "not stated on the job" : `leg ${mm(leg)}`,
      seen: [`judged for ${setFor.join(", ") || "nothing"}`, of(/^Leg|^Throat/)].join("; "),
      isDone: beads.every(({ setup }) => judgedForAskedSize(weld, setup.targetLegMm)),
    },
    {
      what: "Length",
      asked: weld.lengthMm === null ? "not stated on the job" : mm(weld.lengthMm),
      seen: of(/^Length of the weld/),
      isDone: shortOf(weld, beads) === null,
    },
  ];
}

/** By what a weld is to be judged, by name and edition where a verdict or a book says them. */
function criteriaName({ record: { job }, weld, beads }: Looked): string {
  const id = criteriaOf(job.content, weld);
  if (id === null) return "none chosen";
  const judged = beads.find(({ verdict }) => verdict?.criteriaId === id)?.verdict;
  if (judged) return `${judged.criteria}, ${judged.edition}`;
  if (id === job.content.criteriaId && job.criteria !== null) return job.criteria;
  const carried = listCriteria().find((one) => one.id === id);
  return carried ? `${carried.title}, ${carried.edition}` : id;
}

function criteriaRow(looked: Looked): CheckRow {
  const { beads } = looked;
  const results = beads.map(({ number, result }) => `bead ${number} ${result.replace("-", " ")}`);
  return {
    what: "Criteria",
    asked: criteriaName(looked),
    seen: results.join("; ") || "no bead",
    isDone: beads.length > 0 && beads.every(({ result }) => result === "accepted"),
  };
}

/** What the verdicts still wait for. */
function verdictRows({ beads }: Looked): readonly CheckRow[] {
  const verdicts = beads.flatMap(({ verdict }) => (verdict ? [verdict] : []));
  const missing = verdicts.flatMap((verdict) => verdict.missing);
  const unlooked = verdicts.flatMap(({ notLookedFor }) => notLookedFor);
  const none = verdicts.length === 0 ? "no verdict yet" : "";
  return [
    {
      what: "Readings",
      asked: "what its clauses want",
      seen: none || (missing.length === 0 ? "all there" : `still wanted: ${missing.join("; ")}`),
      isDone: none === "" && missing.length === 0,
    },
    {
      what: "Looked for",
      asked: "every imperfection its clauses name",
      seen: none || (unlooked.length === 0 ? "all" : `not yet: ${unlooked.join(", ")}`),
      isDone: none === "" && unlooked.length === 0,
    },
  ];
}

function gaugeRow({ record: { draft, instruments }, beads }: Looked): CheckRow {
  const gauges = [...new Set(beads.flatMap((bead) => [...readingsByGauge(bead).keys()]))];
  return {
    what: "Gauges",
    asked: "ticked, and in calibration on the day",
    seen: gauges.join("; ") || "none used",
    isDone: readingDoubts(beads, instruments, draft.examinedOn).length === 0,
  };
}

function certificateRow({ record: { draft } }: Looked): CheckRow {
  const held = draft.qualification ?? undefined;
  return {
    what: "Certificate",
    asked: "held on the day",
    seen: qualificationText(held) || "not recorded",
    isDone: certificateOn(held, draft.examinedOn) !== "expired",
  };
}
