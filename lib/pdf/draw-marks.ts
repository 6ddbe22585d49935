import type { SheetDocument } from "@/lib/report";
import { drawHeading, flowText, HEADING_HEIGHT, makeRoom, type Flow } from "./flow";
import { drawTable, tableStart, type Column } from "./draw-table";
import { run, type Run } from "./lay-text";
import { GREY } from "./page";

const columns: readonly Column[] = [
  { title: "Mark", share: 0.08 },
  { title: "Imperfection", share: 0.31 },
  { title: "ISO 6520-1", share: 0.12 },
  { title: "Where", share: 0.26 },
  { title: "Size", share: 0.23 },
];

/** What is marked on the photos, one row each, numbered as at the marks. */
export function drawMarks(flow: Flow, sheet: SheetDocument): void {
  const rows = sheet.marks.map((mark): readonly (readonly Run[])[] => [
    [run(sheet.photos.length > 1 ? `${mark.photo}: ${mark.numbers}` : mark.numbers, "strong", 9)],
    [run(mark.name, "strong", 9), ...(mark.note === "" ? [] : [run(` ${mark.note}`, "text", 8, GREY.words)])],
    [run(mark.iso6520 ?? "", "text", 9)],
    [run(mark.place, "text", 9)],
    [run(mark.size, "text", 9)],
  ]);
  makeRoom(flow, HEADING_HEIGHT + (rows.length > 0 ? tableStart(flow, columns, rows) : 14));
  drawHeading(flow, "What is there");
  if (rows.length > 0) drawTable(flow, columns, rows);
  else flowText(flow, [run("Nothing marked.", "text", 9.5)]);
  flow.y += 11;
}
