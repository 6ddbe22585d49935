import { MM_PER_INCH } from "@/lib/base";
import {
  bothText,
  resultNames,
  ruleOf,
  sectionRows,
  type RecordRow,
  type SignedBead,
  type SignedRecord,
} from "@/lib/inspect";
import type { ScenePalette } from "@/lib/marks";
import { missingWords, readingUnit } from "@/lib/report";
import { CAPTION_HEIGHT, drawPhoto, photoSize, type PhotoPaint, type SheetPhoto } from "./draw-photo";
import { drawTable, tableStart, type Column } from "./draw-table";
import { drawHeading, flowText, HEADING_HEIGHT, makeRoom, type Flow } from "./flow";
import { run, type Run } from "./lay-text";
import { BODY_WIDTH, GREY, LEFT } from "./page";

const pair: readonly Column[] = [
  { title: "What", share: 0.28 },
  { title: "As recorded", share: 0.72 },
];

/** A section of the record as a table of two columns. */
export function drawRows(flow: Flow, heading: string, rows: readonly RecordRow[]): void {
  const cells = rows.map(({ label, value }) => [[run(label, "text", 9)], [run(value, "strong", 9)]]);
  makeRoom(flow, HEADING_HEIGHT + (cells.length > 0 ? tableStart(flow, pair, cells) : 14));
  drawHeading(flow, heading);
  if (cells.length > 0) drawTable(flow, pair, cells);
  else flowText(flow, [run("None recorded.", "text", 9.5)]);
  flow.y += 9;
}

/** One bead: its photos with the marks, what was found, and each clause that was read. */
export function drawInspectionBead(
  flow: Flow,
  bead: SignedBead,
  record: SignedRecord,
  paint: { readonly photos: PhotoPaint["photos"]; readonly palette: ScenePalette },
): void {
  const weld = record.job.content.welds.find(({ id }) => id === bead.weldId);
  const rows = photoRows(bead.photos);
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
  drawPhotos(flow, rows, paint);
  drawFindings(flow, bead);
  bead.photos.forEach(({ section }, i) => {
    if (section) drawRows(flow, `Section on photo ${i + 1}`, sectionRows(section, i + 1));
  });
  if (verdict) drawClauses(flow, verdict);
  if (bead.judgement.note !== "")
    flowText(flow, [run("Note: ", "strong", 9), run(bead.judgement.note, "text", 9)], { breaks: true });
  flow.y += 10;
}

const GAP = 14;

interface PhotoRow {
  readonly cells: readonly {
    readonly photo: SignedBead["photos"][number];
    readonly number: number;
    readonly size: { readonly width: number; readonly height: number };
  }[];
  readonly height: number;
}

const COLUMN = (BODY_WIDTH - GAP) / 2;

/** One photo large; several two to a row. */
function photoRows(photos: SignedBead["photos"]): readonly PhotoRow[] {
  const isOne = photos.length === 1;
  const cells = photos.map((photo, i) => ({
    photo,
    number: i + 1,
    size: isOne ? photoSize(photo, BODY_WIDTH, 264) : photoSize(photo, COLUMN, 200),
  }));
  return Array.from({ length: Math.ceil(cells.length / 2) }, (_, i) => {
    const row = cells.slice(2 * i, 2 * i + 2);
    return { cells: row, height: Math.max(...row.map(({ size }) => size.height)) + CAPTION_HEIGHT + 8 };
  });
}

function drawPhotos(
  flow: Flow,
  rows: readonly PhotoRow[],
  paint: { readonly photos: PhotoPaint["photos"]; readonly palette: ScenePalette },
): void {
  for (const { cells, height } of rows) {
    makeRoom(flow, height);
    cells.forEach(({ photo, number, size }, column) =>
      drawPhoto(flow, withLines(photo), number, paint, {
        x: LEFT + column * (COLUMN + GAP),
        y: flow.y,
        ...size,
      }),
    );
    flow.y += height;
  }
  for (const { photo, number } of rows.flatMap(({ cells }) => cells))
    flowText(flow, [run(`Photo ${number}, SHA-256 ${photo.sha256}`, "text", 7, GREY.words)], { gap: 1 });
  flow.y += 5;
}

/** A signed section is drawn as it was picked: where its toes were found is not part of the record. */
function withLines({ section, ...photo }: SignedBead["photos"][number]): SheetPhoto {
  return section ? { ...photo, section: { drawing: section.drawing, places: null } } : photo;
}

const found: readonly Column[] = [
  { title: "Mark", share: 0.08 },
  { title: "Imperfection", share: 0.28 },
  { title: "ISO 6520-1", share: 0.12 },
  { title: "Where", share: 0.24 },
  { title: "Size", share: 0.28 },
];

function drawFindings(flow: Flow, { marks, photos, judgement }: SignedBead): void {
  if (marks.length === 0) flowText(flow, [run("Nothing marked.", "text", 9.5)]);
  else {
    const rows = marks.map((mark): readonly (readonly Run[])[] => [
      [run(photos.length > 1 ? `${mark.photo}: ${mark.numbers}` : mark.numbers, "strong", 9)],
      [run(mark.name, "strong", 9), ...(mark.note ? [run(` ${mark.note}`, "text", 8, GREY.words)] : [])],
      [run(mark.iso6520 ?? "", "text", 9)],
      [run(mark.place, "text", 9)],
      [run(bothText(mark.size), "text", 9)],
    ]);
    makeRoom(flow, tableStart(flow, found, rows));
    drawTable(flow, found, rows);
  }
  flow.y += 6;
  for (const { quantity, value, instrument, resolution } of judgement.readings) {
    const unit = readingUnit(quantity);
    const inches = unit === "mm" ? ` (${(value / MM_PER_INCH).toFixed(3)} in)` : "";
    const words = `Read with ${instrument}: ${missingWords[quantity]} ${value} ${unit}${inches}, resolution ${resolution} ${unit}.`;
    flowText(flow, [run(words, "text", 9)], { gap: 2 });
  }
}

const clauses: readonly Column[] = [
  { title: "Result", share: 0.13 },
  { title: "Clause", share: 0.62 },
  { title: "Source", share: 0.25 },
];

function drawClauses(flow: Flow, verdict: NonNullable<SignedBead["verdict"]>): void {
  const say = (text: string) => flowText(flow, [run(text, "text", 9)]);
  if (verdict.missing.length > 0) say(`Missing: ${verdict.missing.join("; ")}.`);
  if (verdict.notLookedFor.length > 0) say(`Not looked for: ${verdict.notLookedFor.join(", ")}.`);
  if (verdict.clauses.length === 0) return;
  const rows = verdict.clauses.map((row): readonly (readonly Run[])[] => [
    [run(row.result, "strong", 9)],
    [run(`${row.title}: `, "strong", 9), run(bothText(row.detail), "text", 9)],
    [run(`${row.clause}${row.checkYourCopy ? " Check your copy." : ""}`, "text", 8, GREY.words)],
  ]);
  makeRoom(flow, tableStart(flow, clauses, rows));
  drawTable(flow, clauses, rows);
}
