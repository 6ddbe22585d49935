import { issue, type Issue } from "@/lib/base";
import type { InspectionDraft } from "./draft";
import { calibrationOn, instrumentLabel, instrumentNames, type Instrument } from "./instrument";
import type { JobContent, JobWeld } from "./job";
import type { SignedBead } from "./signed-record";
import { viewingLimits } from "./viewing-limits";

/** What keeps a record from saying "accepted", and what is only worth a note. */
export const pointWeights = {
  "maker-missing": "note",
  "procedure-missing": "note",
  "process-missing": "open",
  "criteria-missing": "open",
  "part-incomplete": "open",
  "weld-incomplete": "open",
  "weld-quantity-missing": "open",
  "weld-without-bead": "open",
  "welds-none": "open",
  "date-missing": "open",
  "look-missing": "open",
  "remote-aid-missing": "open",
  "light-missing": "open",
  "light-low": "open",
  "light-below-recommended": "note",
  "distance-missing": "open",
  "distance-far": "open",
  "angle-missing": "open",
  "angle-low": "open",
  "surface-missing": "open",
  "instruments-none": "open",
  "instrument-overdue": "open",
  "instrument-not-yet": "open",
  "instrument-not-recorded": "open",
  "instrument-without-serial": "open",
  "reading-instrument-not-ticked": "open",
  "bead-without-verdict": "open",
  "bead-open": "open",
  "bead-other-criteria": "open",
  "bead-without-photo": "note",
} as const;
export type PointCode = keyof typeof pointWeights;
export type PointIssue = Issue<PointCode>;

export interface PointsInput {
  readonly job: JobContent;
  readonly draft: InspectionDraft;
  readonly instruments: readonly Instrument[];
  readonly beads: readonly SignedBead[];
}

/**
 * What the list of ISO 17637 asks for and is not there, and viewing conditions outside its limits; worst first is the
 * screen's business. Nothing here forbids anything: the signer reads the points and answers them.
 */
export function inspectionPoints(input: PointsInput): readonly PointIssue[] {
  return [
    ...viewingPoints(input.draft),
    ...instrumentPoints(input),
    ...jobPoints(input),
    ...beadPoints(input),
    ...readingPoints(input),
  ];
}

function viewingPoints(draft: InspectionDraft): PointIssue[] {
  const { lightLux, distanceMm, angleDeg } = viewingLimits;
  const points: PointIssue[] = [];
  if (draft.examinedOn === null) points.push(issue("date-missing"));
  if (draft.surface === "") points.push(issue("surface-missing"));
  if (draft.look === null) points.push(issue("look-missing"));
  if (draft.look === "remote" && draft.remoteAid === "") points.push(issue("remote-aid-missing"));
  if (draft.lightLux === null) points.push(issue("light-missing"));
  else if (draft.lightLux < lightLux.least) points.push(issue("light-low", [], { lux: draft.lightLux }));
  else if (draft.lightLux < lightLux.recommended)
    points.push(issue("light-below-recommended", [], { lux: draft.lightLux }));
  // Distance and angle are those of the eye; a borescope or camera has its own.
  if (draft.look === "remote") return points;
  if (draft.distanceMm === null) points.push(issue("distance-missing"));
  else if (draft.distanceMm > distanceMm.most)
    points.push(issue("distance-far", [], { mm: draft.distanceMm }));
  if (draft.angleDeg === null) points.push(issue("angle-missing"));
  else if (draft.angleDeg < angleDeg.least) points.push(issue("angle-low", [], { degrees: draft.angleDeg }));
  return points;
}

function instrumentPoints({ draft, instruments }: PointsInput): PointIssue[] {
  if (instruments.length === 0) return [issue("instruments-none")];
  return instruments.flatMap((one): PointIssue[] => {
    const what = { name: one.name, kind: instrumentNames[one.kind], serial: one.serial || "no serial" };
    const serial = one.serial === "" ? [issue("instrument-without-serial" as const, [], what)] : [];
    if (draft.examinedOn === null) return serial;
    const calibration = calibrationOn(one, draft.examinedOn);
    if (calibration === "valid" || calibration === "needs-none") return serial;
    const due = one.dueOn ?? "";
    return [
      ...serial,
      issue(`instrument-${calibration}` as const, [], { ...what, due, from: one.calibratedOn ?? "" }),
    ];
  });
}

const gaps = (fields: Readonly<Record<string, boolean>>): string =>
  Object.entries(fields)
    .filter(([, isMissing]) => isMissing)
    .map(([name]) => name)
    .join(", ");

function jobPoints({ job, draft }: PointsInput): PointIssue[] {
  const points: PointIssue[] = [];
  if (job.maker === "") points.push(issue("maker-missing"));
  if (job.procedure === "") points.push(issue("procedure-missing"));
  if (job.process === null) points.push(issue("process-missing"));
  if (job.criteriaId === null) points.push(issue("criteria-missing"));
  const looked = lookedAt(job, draft);
  if (looked.length === 0) points.push(issue("welds-none"));
  for (const weld of looked) points.push(...weldPoints(weld, draft));
  const parts = new Set(looked.map(({ partId }) => partId));
  for (const part of job.parts.filter(({ id }) => parts.has(id))) {
    const missing = gaps({
      drawing: part.drawing === "",
      material: part.material === "",
      thickness: part.thicknessMm === null,
    });
    if (missing) points.push(issue("part-incomplete", [], { part: part.name, missing }));
  }
  return points;
}

function weldPoints(weld: JobWeld, draft: InspectionDraft): PointIssue[] {
  const points: PointIssue[] = [];
  const missing = gaps({
    part: weld.partId === null,
    joint: weld.joint === null,
    position: weld.position === null,
    "welder identification": weld.welderId === null && weld.welderMark === "",
  });
  if (missing) points.push(issue("weld-incomplete", [], { weld: weld.number, missing }));
  if ((draft.welds.find(({ weldId }) => weldId === weld.id)?.quantity ?? "") === "")
    points.push(issue("weld-quantity-missing", [], { weld: weld.number }));
  return points;
}

function beadPoints({ job, draft, beads }: PointsInput): PointIssue[] {
  const points: PointIssue[] = [];
  for (const weld of lookedAt(job, draft))
    if (!beads.some(({ weldId }) => weldId === weld.id))
      points.push(issue("weld-without-bead", [], { weld: weld.number }));
  for (const { number, verdict, result, photos } of beads) {
    if (verdict === null) points.push(issue("bead-without-verdict", [], { bead: number }));
    else if (result === "open") points.push(issue("bead-open", [], { bead: number }));
    if (verdict !== null && job.criteriaId !== null && verdict.criteriaId !== job.criteriaId)
      points.push(issue("bead-other-criteria", [], { bead: number, criteria: verdict.criteria }));
    if (photos.length === 0) points.push(issue("bead-without-photo", [], { bead: number }));
  }
  return points;
}

/** Readings taken with something that is not ticked as used in this inspection, each once per bead. */
function readingPoints({ beads, instruments }: PointsInput): PointIssue[] {
  const ticked = new Set(instruments.map(instrumentLabel));
  return beads.flatMap(({ number, judgement }) => {
    const used = new Set(judgement.readings.map(({ instrument }) => instrument));
    return [...used]
      .filter((name) => !ticked.has(name))
      .map((name) => issue("reading-instrument-not-ticked" as const, [], { bead: number, name }));
  });
}

/** The welds of the job that this inspection looked at, in the job's order. */
export function lookedAt(job: JobContent, draft: InspectionDraft): readonly JobWeld[] {
  const ids = new Set(draft.welds.map(({ weldId }) => weldId));
  return job.welds.filter(({ id }) => ids.has(id));
}
