import { dayText, jointWords, lengthText, positionWords, processWords, shopRowText } from "@/lib/report";
import { inch, metric } from "@/lib/units";
import { extentText } from "./extent-text";
import { instrumentNames } from "./instrument";
import { lookedAt } from "./looked-at";
import type { InspectionResult, SignedRecord } from "./signed-record";

export interface RecordRow {
  readonly label: string;
  readonly value: string;
}
export interface RecordSection {
  readonly title: string;
  readonly rows: readonly RecordRow[];
}

export const resultNames: Readonly<Record<InspectionResult, string>> = {
  accepted: "Accepted",
  "not-accepted": "Not accepted",
  open: "Open",
};

const calibrationNames: Readonly<Record<string, string>> = {
  valid: "calibration valid",
  overdue: "CALIBRATION OVERDUE",
  "not-yet": "calibrated after the inspection",
  "not-recorded": "calibration not recorded",
  "needs-none": "no calibration needed",
};

const NOT = "not recorded";
const said = (text: string | null): string => text || NOT;
/** "600 mm (23.6 in)" */
const both = (mm: number | null): string =>
  mm === null ? NOT : `${lengthText(mm, metric)} (${lengthText(mm, inch)})`;

/** The record in words, section by section: one source for the screen, the paper and the comparison of revisions. */
export function recordSections(record: SignedRecord): readonly RecordSection[] {
  return [
    jobSection(record),
    ...record.shopSets.map(limitsSection),
    viewingSection(record),
    instrumentSection(record),
    ...weldSections(record),
  ];
}

/** No book carries the shop's own limits, so the record says them in full. */
function limitsSection({
  title,
  version,
  author,
  rows,
  note,
}: SignedRecord["shopSets"][number]): RecordSection {
  return {
    title: `The shop's own limits: ${title}, version ${version}`,
    rows: [
      { label: "Written by", value: author },
      ...rows.map((row, i) => ({
        label: `${i + 1}. ${row.title}`,
        value: [
          [shopRowText(row, metric), ...(row.limit === null ? [] : [`(${shopRowText(row, inch)})`])].join(
            " ",
          ),
          row.note,
        ]
          .filter(Boolean)
          .join(" "),
      })),
      ...(note ? [{ label: "Note", value: note }] : []),
    ],
  };
}

function jobSection({ job }: SignedRecord): RecordSection {
  const { content } = job;
  return {
    title: "Job",
    rows: [
      { label: "Job", value: `${job.number}, ${content.title} (revision ${job.revision})` },
      { label: "Maker of the part", value: said(content.maker) },
      { label: "Contract or order", value: said(content.contract) },
      { label: "Procedure (WPS)", value: said(content.procedure) },
      { label: "Welding process", value: content.process ? processWords[content.process] : NOT },
      { label: "Acceptance criteria", value: said(job.criteria) },
    ],
  };
}

function viewingSection({ draft }: SignedRecord): RecordSection {
  const look = { direct: "direct", remote: `remote: ${said(draft.remoteAid)}` };
  return {
    title: "Viewing conditions",
    rows: [
      { label: "Day of the inspection", value: draft.examinedOn ? dayText(draft.examinedOn) : NOT },
      ...(draft.examiningBody ? [{ label: "Examining body", value: draft.examiningBody }] : []),
      { label: "Look", value: draft.look ? look[draft.look] : NOT },
      { label: "Light at the surface", value: draft.lightLux === null ? NOT : `${draft.lightLux} lx` },
      { label: "Distance of the eye", value: both(draft.distanceMm) },
      { label: "Viewing angle", value: draft.angleDeg === null ? NOT : `${draft.angleDeg}° to the surface` },
      { label: "Surface", value: said(draft.surface) },
      ...(draft.remarks ? [{ label: "Remarks", value: draft.remarks }] : []),
    ],
  };
}

function instrumentSection({ instruments }: SignedRecord): RecordSection {
  return {
    title: "Instruments",
    rows: instruments.map((one) => ({
      label: one.name,
      value: [
        instrumentNames[one.kind],
        `serial ${said(one.serial)}`,
        ...(one.resolution === null ? [] : [`reads to ${one.resolution}`]),
        `calibrated ${said(one.calibratedOn)}`,
        `due ${said(one.dueOn)}`,
        calibrationNames[one.calibration] ?? one.calibration,
      ].join("; "),
    })),
  };
}

function weldSections(record: SignedRecord): readonly RecordSection[] {
  const { content } = record.job;
  return lookedAt(content, record.draft).map((weld) => {
    const part = content.parts.find(({ id }) => id === weld.partId);
    const result = record.weldResults.find(({ weldId }) => weldId === weld.id)?.result ?? "open";
    const looked = record.draft.welds.find(({ weldId }) => weldId === weld.id);
    const { lengthMm } = weld;
    const beads = record.beads.filter(({ weldId }) => weldId === weld.id);
    return {
      title: `Weld ${weld.number}`,
      rows: [
        { label: "Result", value: resultNames[result] },
        { label: "Part", value: said(part?.name ?? null) },
        { label: "Drawing", value: said(part?.drawing ?? null) },
        { label: "Material", value: said(part?.material ?? null) },
        { label: "Thickness", value: both(part?.thicknessMm ?? null) },
        {
          label: "Joint and position",
          value: `${weld.joint ? jointWords[weld.joint] : NOT}, ${weld.position ? positionWords[weld.position] : NOT}`,
        },
        { label: "Welder identification", value: said(record.welderMarks[weld.id] ?? null) },
        ...(lengthMm === null ? [] : [{ label: "Length of the weld", value: both(lengthMm) }]),
        { label: "To inspect", value: said(extentText(weld.asked, weld.askedNote, lengthMm)) },
        {
          label: "Seen",
          value: said(extentText(looked?.seen ?? null, looked?.seenNote ?? "", lengthMm)),
        },
        { label: "Beads", value: beads.map(({ number }) => number).join(", ") || "none" },
      ],
    };
  });
}
