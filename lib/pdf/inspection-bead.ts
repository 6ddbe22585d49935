import {
  bothText,
  readingRows,
  resultNames,
  ruleOf,
  sectionRows,
  type PaperUnits,
  type RecordRow,
  type SignedBead,
  type SignedRecord,
} from "@/lib/inspect";
import { drawTable, tableStart, type Column } from "./draw-table";
import { drawHeading, flowText, HEADING_HEIGHT, makeRoom, type Flow } from "./flow";
import { foldClauses } from "./fold-clauses";
import type { InspectionPaint } from "./inspection-input";
import { drawPhotoRows, photoRows } from "./inspection-photos";
import { run, type Run } from "./lay-text";
import { GREY } from "./page";

const pair: readonly Column[] = [
  { title: "What", share: 0.28 },
  { title: "As recorded", share: 0.72 },
];

const twoPairs: readonly Column[] = [
  { title: "What", share: 0.19 },
  { title: "As recorded", share: 0.31 },
  { title: "What", share: 0.19 },
  { title: "As recorded", share: 0.31 },
];
/** Letters of a row that still stands beside another one. */
const SHORT = 34;

/** Rows two to a line where all are short and they are more than a few, else one to a line. */
function laidOut(rows: readonly RecordRow[]): {
  readonly columns: readonly Column[];
  readonly cells: readonly (readonly (readonly Run[])[])[];
} {
  const cellsOf = (row: RecordRow | undefined): readonly (readonly Run[])[] =>
    row ? [[run(row.label, "text", 9)], [run(row.value, "strong", 9)]] : [[], []];
  const isShort =
    rows.length > 3 && rows.every(({ label, value }) => Math.max(label.length, value.length) <= SHORT);
  if (!isShort) return { columns: pair, cells: rows.map(cellsOf) };
  const half = Math.ceil(rows.length / 2);
  const cells = Array.from({ length: half }, (_, i) => [...cellsOf(rows[i]), ...cellsOf(rows[half + i])]);
  return { columns: twoPairs, cells };
}

/** A section of the record as a table of what and how it was recorded. */
export function drawRows(flow: Flow, heading: string, rows: readonly RecordRow[]): void {
  const { columns, cells } = laidOut(rows);
  makeRoom(flow, HEADING_HEIGHT + (cells.length > 0 ? tableStart(flow, columns, cells) : 14));
  drawHeading(flow, heading);
  if (cells.length > 0) drawTable(flow, columns, cells);
  else flowText(flow, [run("None recorded.", "text", 9.5)]);
  flow.y += 9;
}

/** One bead: its photos with the marks, what was found, and each clause that was read. */
export function drawInspectionBead(
  flow: Flow,
  bead: SignedBead,
  record: SignedRecord,
  paint: InspectionPaint,
): void {
  const { units } = paint;
  const weld = record.job.content.welds.find(({ id }) => id === bead.weldId);
  const rows = photoRows(flow, bead, paint);
  // A heading over an empty foot of a page, its photo on the next, would be read as a bead without one.
  makeRoom(flow, HEADING_HEIGHT + 52 + (rows[0]?.height ?? 100));
  drawHeading(flow, `Weld ${weld?.number ?? "?"}, bead ${bead.number}, revision ${bead.revision}`);
  const { verdict } = bead;
  const by = verdict ? `by ${verdict.criteria}, ${verdict.edition}` : "no criteria chosen";
  flowText(
    flow,
    [
      run(`${resultNames[bead.result]}, `, "strong", 10),
      run(`${by}. `, "text", 10),
      // A signed verdict holds it clause by clause.
      ...(verdict?.clauses.some((one) => one.checkYourCopy) ? [run("Check your copy. ", "strong", 10)] : []),
      run(bead.title, "text", 10),
    ],
    {
      gap: 6,
    },
  );
  if (verdict)
    flowText(flow, [run("Decision rule: ", "strong", 9), run(`${ruleOf(verdict)}.`, "text", 9)], { gap: 6 });
  drawPhotoRows(flow, rows, paint);
  drawFindings(flow, bead, units);
  drawReadings(flow, bead, units);
  bead.photos.forEach(({ section }, i) => {
    if (section) drawRows(flow, `Section on photo ${i + 1}`, sectionRows(section, i + 1, units));
  });
  if (verdict) drawClauses(flow, verdict, units);
  if (bead.judgement.note !== "")
    flowText(flow, [run("Note: ", "strong", 9), run(bead.judgement.note, "text", 9)], { breaks: true });
  flow.y += 10;
}

const found: readonly Column[] = [
  { title: "Mark", share: 0.08 },
  { title: "Imperfection", share: 0.24 },
  { title: "ISO 6520-1", share: 0.1 },
  { title: "Where", share: 0.31 },
  { title: "Size", share: 0.27 },
];

function drawFindings(flow: Flow, { marks, photos }: SignedBead, units: PaperUnits): void {
  if (marks.length === 0) flowText(flow, [run("Nothing marked.", "text", 9.5)]);
  else {
    const rows = marks.map((mark): readonly (readonly Run[])[] => [
      [run(photos.length > 1 ? `${mark.photo}: ${mark.numbers}` : mark.numbers, "strong", 9)],
      [run(mark.name, "strong", 9), ...(mark.note ? [run(` ${mark.note}`, "text", 8, GREY.words)] : [])],
      [run(mark.iso6520 ?? "", "text", 9)],
      [run(mark.place, "text", 9)],
      [run(bothText(mark.size, units), "text", 9)],
    ]);
    makeRoom(flow, tableStart(flow, found, rows));
    drawTable(flow, found, rows);
  }
  flow.y += 6;
}

const readings: readonly Column[] = [
  { title: "Reading", share: 0.32 },
  { title: "Read", share: 0.22 },
  { title: "With", share: 0.3 },
  { title: "Smallest step", share: 0.16 },
];

function drawReadings(flow: Flow, bead: SignedBead, units: PaperUnits): void {
  const rows = readingRows(bead, units).map(({ what, read, instrument, step }) => [
    [run(what, "text", 9)],
    [run(read, "strong", 9)],
    [run(instrument, "text", 9)],
    [run(step, "text", 9)],
  ]);
  if (rows.length === 0) return;
  makeRoom(flow, tableStart(flow, readings, rows));
  drawTable(flow, readings, rows);
  flow.y += 6;
}

const clauses: readonly Column[] = [
  { title: "Result", share: 0.13 },
  { title: "Clause", share: 0.62 },
  { title: "Source", share: 0.25 },
];

function drawClauses(flow: Flow, verdict: NonNullable<SignedBead["verdict"]>, units: PaperUnits): void {
  const say = (text: string) => flowText(flow, [run(text, "text", 9)]);
  if (verdict.notCarried) say(verdict.notCarried);
  if (verdict.missing.length > 0) say(`Missing: ${verdict.missing.join("; ")}.`);
  if (verdict.notLookedFor.length > 0) say(`Not looked for: ${verdict.notLookedFor.join(", ")}.`);
  if (verdict.clauses.length === 0) return;
  const rows = verdict.clauses.map((row): readonly (readonly Run[])[] => [
    [run(row.result, "strong", 9)],
    [run(`${row.title}: `, "strong", 9), run(bothText(row.detail, units), "text", 9)],
    [run(`${foldClauses(row.clause)}${row.checkYourCopy ? " Check your copy." : ""}`, "text", 8, GREY.words)],
  ]);
  makeRoom(flow, tableStart(flow, clauses, rows));
  drawTable(flow, clauses, rows);
}
