import { issue } from "@/lib/base";
import type { InspectionDraft } from "./draft";
import { calibrationOn, instrumentNames } from "./instrument";
import { criteriaOf } from "./job";
import { lookedAt } from "./looked-at";
import type { PointIssue } from "./point-weights";
import { certificateOn } from "./qualification";
import { viewingLimits } from "./viewing-limits";
import { weldPoints } from "./weld-points";
import type { WeldsInput } from "./weld-results";

/**
 * What the list of ISO 17637 asks for and is not there, and viewing conditions outside its limits; worst first is the
 * screen's business. Nothing here forbids anything: the signer reads the points and answers them.
 */
export function inspectionPoints(input: WeldsInput): readonly PointIssue[] {
  return [
    ...viewingPoints(input.draft),
    ...certificatePoints(input.draft),
    ...instrumentPoints(input),
    ...jobPoints(input),
    ...weldPoints(input),
    ...beadPoints(input),
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

/** That it expired stands at each weld, which it keeps open (`weldPoints`). */
function certificatePoints({ qualification, examinedOn }: InspectionDraft): PointIssue[] {
  const standing = certificateOn(qualification ?? undefined, examinedOn);
  if (standing === "none") return [issue("certificate-missing")];
  if (standing !== "expiry-unknown" || qualification?.expiresOn) return [];
  return [issue("certificate-expiry-unknown", [], { certificate: qualification?.certificate ?? "" })];
}

function instrumentPoints({ draft, instruments }: WeldsInput): PointIssue[] {
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

function jobPoints({ job, draft }: WeldsInput): PointIssue[] {
  const points: PointIssue[] = [];
  if (job.maker === "") points.push(issue("maker-missing"));
  if (job.procedure === "") points.push(issue("procedure-missing"));
  if (job.process === null) points.push(issue("process-missing"));
  const looked = lookedAt(job, draft);
  const isCovered = looked.length > 0 && looked.every((weld) => criteriaOf(job, weld) !== null);
  if (job.criteriaId === null && !isCovered) points.push(issue("criteria-missing"));
  if (looked.length === 0) points.push(issue("welds-none"));
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

function beadPoints({ job, beads }: WeldsInput): PointIssue[] {
  return beads.flatMap(({ number, verdict, photos, weldId }): PointIssue[] => [
    ...(verdict !== null && isOther(job, weldId, verdict.criteriaId)
      ? [issue("bead-other-criteria" as const, [], { bead: number, criteria: verdict.criteria })]
      : []),
    ...(photos.length === 0 ? [issue("bead-without-photo" as const, [], { bead: number })] : []),
  ]);
}

function isOther(job: WeldsInput["job"], weldId: string, criteriaId: string): boolean {
  const weld = job.welds.find(({ id }) => id === weldId);
  const asked = weld ? criteriaOf(job, weld) : job.criteriaId;
  return asked !== null && criteriaId !== asked;
}
