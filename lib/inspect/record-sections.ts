import { dayText, jointWords, lengthText, positionWords, processWords, shopRowText } from "@/lib/report";
import { inch, metric } from "@/lib/units";
import { extentText } from "./extent-text";
import { instrumentNames } from "./instrument";
import type { JobWeld } from "./job";
import { lookedAt } from "./looked-at";
import { bothText, lengthIn, type PaperUnits } from "./paper-units";
import { qualificationText } from "./qualification";
import { planText } from "./sample";
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
/** "600 mm (23.622 in)", or one of the two. */
const length = (mm: number | null, units: PaperUnits): string => (mm === null ? NOT : lengthIn(units, mm));

/** The record in words, section by section: one source for the screen, the paper and the comparison of revisions. */
export function recordSections(record: SignedRecord, units: PaperUnits = "both"): readonly RecordSection[] {
  return [
    jobSection(record),
    ...record.shopSets.map((set) => limitsSection(set, units)),
    viewingSection(record, units),
    ...sampleSection(record),
    instrumentSection(record),
    ...weldSections(record, units),
  ];
}

/** How the welds were chosen, where not all were to be looked at. */
function sampleSection({ draft, job }: SignedRecord): readonly RecordSection[] {
  const { sample } = draft;
  if (!sample) return [];
  const numbers = (ids: readonly string[]) =>
    ids
      .map((id) => job.content.welds.find((weld) => weld.id === id)?.number ?? `${id} (struck off)`)
      .join(", ");
  return [
    {
      title: "Sample",
      rows: [
        { label: "Plan", value: planText(sample.take, sample.lot) },
        { label: "Why a sample", value: said(sample.why) },
        { label: "Drawn from", value: `${sample.from.length} welds: ${numbers(sample.from)}` },
        { label: "Chosen", value: numbers(sample.chosen) },
        { label: "Drawn with", value: `seed ${sample.seed}, draw ${sample.draws}` },
      ],
    },
  ];
}

/** No book carries the shop's own limits, so the record says them in full. */
function limitsSection(
  { title, version, author, rows, note }: SignedRecord["shopSets"][number],
  units: PaperUnits,
): RecordSection {
  return {
    title: `The shop's own limits: ${title}, version ${version}`,
    rows: [
      { label: "Written by", value: author },
      ...rows.map((row, i) => ({
        label: `${i + 1}. ${row.title}`,
        value: [limitText(row, units), row.note].filter(Boolean).join(" "),
      })),
      ...(note ? [{ label: "Note", value: note }] : []),
    ],
  };
}

function limitText(row: SignedRecord["shopSets"][number]["rows"][number], units: PaperUnits): string {
  const mm = shopRowText(row, metric);
  return bothText({ metric: mm, inch: row.limit === null ? mm : shopRowText(row, inch) }, units);
}

function jobSection({ job }: SignedRecord): RecordSection {
  const { content } = job;
  return {
    title: "Job",
    rows: [
      { label: "Job", value: `${job.number}, ${content.title} (revision ${job.revision})` },
      { label: "Maker of the part", value: said(content.maker) },
      ...(content.customer ? [{ label: "Customer", value: content.customer }] : []),
      { label: "Contract or order", value: said(content.contract) },
      { label: "Procedure (WPS)", value: said(content.procedure) },
      { label: "Welding process", value: content.process ? processWords[content.process] : NOT },
      { label: "Acceptance criteria", value: said(job.criteria) },
    ],
  };
}

/** An eye's distance is no reading of a gauge: inches to a tenth. */
const distanceText = (mm: number | null, units: PaperUnits): string =>
  mm === null
    ? NOT
    : bothText(
        { metric: lengthText(mm, metric), inch: lengthText(Math.round(mm / 2.54) * 2.54, inch) },
        units,
      );

function viewingSection({ draft }: SignedRecord, units: PaperUnits): RecordSection {
  const look = { direct: "direct", remote: `remote: ${said(draft.remoteAid)}` };
  return {
    title: "Viewing conditions",
    rows: [
      { label: "Day of the inspection", value: draft.examinedOn ? dayText(draft.examinedOn) : NOT },
      ...(draft.examiningBody ? [{ label: "Examining body", value: draft.examiningBody }] : []),
      { label: "Look", value: draft.look ? look[draft.look] : NOT },
      { label: "Light at the surface", value: draft.lightLux === null ? NOT : `${draft.lightLux} lx` },
      { label: "Distance of the eye", value: distanceText(draft.distanceMm, units) },
      { label: "Viewing angle", value: draft.angleDeg === null ? NOT : `${draft.angleDeg}° to the surface` },
      { label: "Surface", value: said(draft.surface) },
      ...(draft.reportNumber ? [{ label: "Report number", value: draft.reportNumber }] : []),
      ...(draft.qualification
        ? [{ label: "Inspector's certificate", value: qualificationText(draft.qualification) }]
        : []),
      ...(draft.remarks ? [{ label: "Remarks", value: draft.remarks }] : []),
    ],
  };
}

/** Each instrument in words: name, kind, serial number, smallest step, calibrated, due, how it stood that day. */
export function instrumentCells({ instruments }: SignedRecord): readonly (readonly string[])[] {
  return instruments.map((one) => [
    one.name,
    instrumentNames[one.kind],
    said(one.serial),
    one.resolution === null ? NOT : String(one.resolution),
    said(one.calibratedOn),
    said(one.dueOn),
    calibrationNames[one.calibration] ?? one.calibration,
  ]);
}

function instrumentSection(record: SignedRecord): RecordSection {
  const words = ["", "", "serial ", "reads to ", "calibrated ", "due ", ""];
  return {
    title: "Instruments",
    rows: instrumentCells(record).map(([name = "", ...cells]) => ({
      label: name,
      value: cells
        .map((text, i) => `${words[i + 1]}${text}`)
        .filter((text) => text !== `reads to ${NOT}`)
        .join("; "),
    })),
  };
}

function weldSections(record: SignedRecord, units: PaperUnits): readonly RecordSection[] {
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
        { label: "Thickness", value: length(part?.thicknessMm ?? null, units) },
        {
          label: "Joint and position",
          value: jointAndPosition(weld),
        },
        { label: "Welder identification", value: said(record.welderMarks[weld.id] ?? null) },
        ...(lengthMm === null ? [] : [{ label: "Length of the weld", value: length(lengthMm, units) }]),
        ...askedRows(weld, units),
        { label: "To inspect", value: said(extentText(weld.asked, weld.askedNote, lengthMm, units)) },
        {
          label: "Seen",
          value: said(extentText(looked?.seen ?? null, looked?.seenNote ?? "", lengthMm, units)),
        },
        { label: "Beads", value: beads.map(({ number }) => number).join(", ") || "none" },
      ],
    };
  });
}

/** What is known of both; what neither says is said once. */
function jointAndPosition({ joint, position }: JobWeld): string {
  if (!joint && !position) return NOT;
  return `${joint ? jointWords[joint] : NOT}, ${position ? positionWords[position] : NOT}`;
}

/** The size a weld is asked to have, where the job says one. */
function askedRows({ legMm, throatMm }: JobWeld, units: PaperUnits): readonly RecordRow[] {
  return [
    ...(legMm ? [{ label: "Leg asked for", value: lengthIn(units, legMm) }] : []),
    ...(throatMm ? [{ label: "Throat asked for", value: lengthIn(units, throatMm) }] : []),
  ];
}
