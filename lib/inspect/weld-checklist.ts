import { askedLegMm, judgedForAskedSize, shortOf } from "./asked-size";
import { extentText } from "./extent-text";
import { criteriaOf } from "./job";
import { lengthIn, type PaperUnits } from "./paper-units";
import { certificateOn, qualificationText } from "./qualification";
import { readingDoubts, readingsByGauge } from "./reading-doubts";
import { readingRows } from "./reading-rows";
import type { SignedRecord } from "./signed-record";
import { weldExtent } from "./weld-results";

/** One thing that is asked of a weld, and what is there of it. */
export interface CheckRow {
  readonly what: string;
  readonly asked: string;
  readonly seen: string;
  /** Whether it leaves the weld nothing to wait for. */
  readonly isDone: boolean;
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
  const { job, draft, instruments } = record;
  const weld = job.content.welds.find(({ id }) => id === weldId);
  if (!weld) return [];
  const beads = record.beads.filter((bead) => bead.weldId === weldId);
  const { lengthMm, asked, askedNote } = weld;
  const seen = draft.welds.find((one) => one.weldId === weldId);
  const mm = (value: number) => lengthIn(units, value);
  const read = beads.flatMap((bead) => readingRows(bead, units).map(({ what, read }) => `${what} ${read}`));
  const of = (name: RegExp) => read.filter((words) => name.test(words)).join("; ") || "not read";
  const leg = askedLegMm(weld);
  const doubts = readingDoubts(beads, instruments, draft.examinedOn);
  const gauges = [...new Set(beads.flatMap((bead) => [...readingsByGauge(bead).keys()]))];
  const verdicts = beads.flatMap(({ verdict }) => (verdict ? [verdict] : []));
  const missing = verdicts.flatMap((verdict) => verdict.missing);
  const unlooked = verdicts.flatMap(({ notLookedFor }) => notLookedFor);
  const judged = beads.length > 0 && beads.every(({ result }) => result === "accepted");
  const certificate = certificateOn(draft.qualification ?? undefined, draft.examinedOn);
  const setFor = beads.map(({ setup }) => (setup.targetLegMm === null ? "no size" : mm(setup.targetLegMm)));
  return [
    {
      what: "Extent",
      asked: extentText(asked, askedNote, lengthMm, units) || "not recorded",
      seen: extentText(seen?.seen ?? null, seen?.seenNote, lengthMm, units) || "not recorded",
      isDone: weldExtent(weld, draft).kind === "full",
    },
    {
      what: "Size",
      asked: leg === null ? "not stated on the job" : `leg ${mm(leg)}`,
      seen: [`judged for ${setFor.join(", ") || "nothing"}`, of(/^Leg|^Throat/)].join("; "),
      isDone: beads.every(({ setup }) => judgedForAskedSize(weld, setup.targetLegMm)),
    },
    {
      what: "Length",
      asked: lengthMm === null ? "not stated on the job" : mm(lengthMm),
      seen: of(/^Length of the weld/),
      isDone: shortOf(weld, beads) === null,
    },
    {
      what: "Criteria",
      asked: criteriaOf(job.content, weld) ?? "none chosen",
      seen:
        beads.map(({ number, result }) => `bead ${number} ${result.replace("-", " ")}`).join("; ") ||
        "no bead",
      isDone: judged,
    },
    {
      what: "Readings",
      asked: "what its clauses want",
      seen: missing.length === 0 ? `${read.length} read` : `still wanted: ${missing.join("; ")}`,
      isDone: missing.length === 0,
    },
    {
      what: "Looked for",
      asked: "every imperfection its clauses name",
      seen: unlooked.length === 0 ? "all" : `not yet: ${unlooked.join(", ")}`,
      isDone: unlooked.length === 0,
    },
    {
      what: "Gauges",
      asked: "ticked, and in calibration on the day",
      seen: gauges.join("; ") || "none used",
      isDone: doubts.length === 0,
    },
    {
      what: "Certificate",
      asked: "held on the day",
      seen: qualificationText(draft.qualification ?? undefined) || "not recorded",
      isDone: certificate !== "expired",
    },
  ];
}
