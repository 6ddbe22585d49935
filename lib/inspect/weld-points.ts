import { issue } from "@/lib/base";
import { extentText, weldPartText } from "./extent-text";
import type { JobWeld } from "./job";
import { lookedAt } from "./looked-at";
import { judgedForAskedSize, shortOf } from "./asked-size";
import type { PointIssue } from "./point-weights";
import { certificateOn } from "./qualification";
import { readingDoubts } from "./reading-doubts";
import { weldExtent, type WeldsInput } from "./weld-results";

/** Where a point lies: at one weld, which it keeps open. */
const at = (weldId: string) => ["welds", weldId] as const;

/** The weld a point lies at; null: it is about the whole inspection, or one of its beads. */
export const weldOf = ({ path: [where, weldId] }: PointIssue): string | null =>
  where === "welds" && typeof weldId === "string" ? weldId : null;

/** What keeps single welds open: extents, missing beads, and readings with gauges not known to be valid. */
export function weldPoints(input: WeldsInput): PointIssue[] {
  return lookedAt(input.job, input.draft).flatMap((weld) => [
    ...incomplete(weld),
    ...extentPoints(weld, input),
    ...sizePoints(weld, input),
    ...foundPoints(weld, input),
    ...gaugePoints(weld, input),
    ...certificatePoints(weld, input),
  ]);
}

function incomplete(weld: JobWeld): PointIssue[] {
  const missing = Object.entries({
    part: weld.partId === null,
    joint: weld.joint === null,
    position: weld.position === null,
    "welder identification": weld.welderId === null && weld.welderMark === "",
  })
    .filter(([, isMissing]) => isMissing)
    .map(([name]) => name)
    .join(", ");
  return missing ? [issue("weld-incomplete", [], { weld: weld.number, missing })] : [];
}

function extentPoints(weld: JobWeld, { draft }: WeldsInput): PointIssue[] {
  const { number, asked, askedNote, lengthMm, id } = weld;
  const { seen = null, seenNote = "" } = draft.welds.find(({ weldId }) => weldId === id) ?? {};
  const standing = weldExtent(weld, draft);
  const said = {
    weld: number,
    asked: extentText(asked),
    seen: extentText(seen),
    length: lengthMm === null ? "" : weldPartText({ percent: null, lengthMm }),
  };
  switch (standing.kind) {
    case "full":
      return [];
    case "asked-unknown":
      return [issue("extent-asked-unknown", at(id), { weld: number, note: askedNote })];
    case "seen-unknown":
      return [issue("extent-seen-unknown", at(id), { weld: number, note: seenNote })];
    case "short":
      return [issue("extent-short", at(id), { ...said, missing: weldPartText(standing.missing) })];
    default:
      return [issue(`extent-${standing.kind}` as const, at(id), said)];
  }
}

/** Beads that were judged for another size than the weld is asked to have, or are shorter than that. */
function sizePoints(weld: JobWeld, { beads }: WeldsInput): PointIssue[] {
  const { id, number, legMm, throatMm } = weld;
  const mm = (lengthMm: number) => weldPartText({ percent: null, lengthMm });
  const own = beads.filter(({ weldId }) => weldId === id);
  const asked = legMm ? `a leg of ${mm(legMm)}` : `a throat of ${mm(throatMm ?? 0)}`;
  const others = own
    .filter(({ setup }) => !judgedForAskedSize(weld, setup.targetLegMm))
    .map(({ number: bead, setup: { targetLegMm } }): PointIssue => {
      const judged = targetLegMm === null ? "without a size" : `for a leg of ${mm(targetLegMm)}`;
      return issue("size-other", at(id), { weld: number, bead, asked, judged });
    });
  const short = shortOf(weld, own);
  if (short === null) return others;
  const said = { weld: number, bead: own[0]?.number ?? 0, asked: mm(short.asked), read: mm(short.read) };
  return [...others, issue("length-short", at(id), said)];
}

function certificatePoints({ id, number }: JobWeld, { draft }: WeldsInput): PointIssue[] {
  const { qualification, examinedOn } = draft;
  if (!qualification || certificateOn(qualification, examinedOn) !== "expired") return [];
  const { certificate, expiresOn } = qualification;
  const days = { until: expiresOn ?? "", day: examinedOn ?? "" };
  return [issue("certificate-expired", at(id), { weld: number, certificate, ...days })];
}

function foundPoints({ id, number: weld }: JobWeld, { beads }: WeldsInput): PointIssue[] {
  const own = beads.filter(({ weldId }) => weldId === id);
  if (own.length === 0) return [issue("weld-without-bead", at(id), { weld })];
  return own.flatMap(({ number, verdict, result }): PointIssue[] => {
    if (verdict === null) return [issue("bead-without-verdict", at(id), { bead: number })];
    return result === "open" ? [issue("bead-open", at(id), { bead: number })] : [];
  });
}

function gaugePoints({ id, number }: JobWeld, { beads, instruments, draft }: WeldsInput): PointIssue[] {
  const own = beads.filter(({ weldId }) => weldId === id);
  return readingDoubts(own, instruments, draft.examinedOn).map((one): PointIssue => {
    const said = { weld: number, bead: one.bead, readings: one.readings.join(", "), name: one.gauge };
    if (one.doubt === "not-ticked") return issue("reading-instrument-not-ticked", at(id), said);
    const days = { due: one.dueOn ?? "", from: one.calibratedOn ?? "", day: draft.examinedOn ?? "" };
    return issue(`reading-gauge-${one.doubt}` as const, at(id), { ...said, ...days });
  });
}
