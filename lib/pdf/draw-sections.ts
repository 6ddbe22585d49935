import { CHECK_YOUR_COPY, type PhotoCrop, type SheetDocument, type SheetSection } from "@/lib/report";
import { drawCrop, photoSize, type PhotoPaint, type SheetPhoto } from "./draw-photo";
import { drawTable, tableStart, type Column } from "./draw-table";
import { drawHeading, flowText, HEADING_HEIGHT, makeRoom, type Flow } from "./flow";
import { run, type Run } from "./lay-text";
import { BODY_WIDTH, GREY, LEFT } from "./page";

const pairs: readonly Column[] = [
  { title: "Size", share: 0.29 },
  { title: "", share: 0.21 },
  { title: "Size", share: 0.29 },
  { title: "", share: 0.21 },
];
const clauseColumns: readonly Column[] = [
  { title: "Result", share: 0.14 },
  { title: "Row", share: 0.56 },
  { title: "Source", share: 0.3 },
];
const reportColumns: readonly Column[] = [
  { title: "Report", share: 0.36 },
  { title: "As written", share: 0.64 },
];

/** Every cut and etched weld of the bead: its figures, and the macro criteria row by row. */
export function drawSections(flow: Flow, { photos }: SheetDocument, paint: PhotoPaint): void {
  photos.forEach((photo, i) => {
    if (photo.section) drawSection(flow, photo, photo.section, i + 1, paint);
  });
}

const PICTURE_HEIGHT = 210;

/** The weld alone, as large as it fits. */
function drawWeld(flow: Flow, photo: SheetPhoto, crop: PhotoCrop, number: number, paint: PhotoPaint): void {
  const size = photoSize({ widthPx: crop.width, heightPx: crop.height }, BODY_WIDTH, PICTURE_HEIGHT);
  const alt = `The weld on photo ${number}, cut and etched: its outline, the edges of the joint, the toes and the root.`;
  drawCrop(flow, photo, crop, alt, paint, { x: LEFT, y: flow.y, ...size });
  flow.y += size.height + 8;
}

function drawSection(
  flow: Flow,
  photo: SheetPhoto,
  section: SheetSection,
  number: number,
  paint: PhotoPaint,
): void {
  const say = (text: string) => flowText(flow, [run(text, "text", 9.5)]);
  const { figures, verdict } = section;
  const rows = figureRows(figures);
  const { crop } = section;
  const picture = crop ? PICTURE_HEIGHT + 8 : 0;
  makeRoom(flow, HEADING_HEIGHT + picture + (rows.length > 0 ? tableStart(flow, pairs, rows) : 14));
  drawHeading(flow, `Section on photo ${number}`);
  if (crop) drawWeld(flow, photo, crop, number, paint);
  if (rows.length > 0) drawTable(flow, pairs, rows);
  else say("No size read.");
  flow.y += 3;
  if (section.unread.length > 0) say(`Not read: ${section.unread.join(", ")}.`);
  section.problems.forEach(say);
  if (verdict) drawRows(flow, verdict);
  if (section.report.length > 0) {
    const written = section.report.map(({ label, value }) => [
      [run(label, "text", 9)],
      [run(value, "strong", 9)],
    ]);
    makeRoom(flow, tableStart(flow, reportColumns, written));
    drawTable(flow, reportColumns, written);
  }
  flow.y += 3;
  flowText(flow, [run(section.caution, "text", 7.9)], { gap: 9 });
}

/** Two figures to a line. */
function figureRows(figures: SheetSection["figures"]): readonly (readonly (readonly Run[])[])[] {
  const half = Math.ceil(figures.length / 2);
  const cells = (one: SheetSection["figures"][number] | undefined): readonly (readonly Run[])[] =>
    one ? [[run(one.name, "text", 9)], [run(one.text, "strong", 9)]] : [[], []];
  return Array.from({ length: half }, (_, i) => [...cells(figures[i]), ...cells(figures[half + i])]);
}

function drawRows(flow: Flow, verdict: NonNullable<SheetSection["verdict"]>): void {
  const say = (text: string) => flowText(flow, [run(text, "text", 9.5)]);
  flow.y += 3;
  flowText(flow, [run(`${verdict.word}: `, "strong", 10), run(verdict.criteria, "text", 10)]);
  say(verdict.long);
  if (verdict.checkYourCopy) say(CHECK_YOUR_COPY);
  const rows = verdict.clauses.map((row): readonly (readonly Run[])[] => [
    [run(row.result, "strong", 9)],
    [run(`${row.title}${row.detail ? ": " : ""}`, "strong", 9), run(row.detail, "text", 9)],
    [
      run(row.clause, "text", 8, GREY.words),
      ...(row.checkYourCopy ? [run(" Check your copy.", "text", 8, GREY.words)] : []),
    ],
  ]);
  makeRoom(flow, tableStart(flow, clauseColumns, rows));
  drawTable(flow, clauseColumns, rows);
  flow.y += 3;
  if (verdict.notCovered.length > 0) say(`Not judged here: ${verdict.notCovered.join("; ")}`);
}
