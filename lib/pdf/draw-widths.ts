import { WIDTH_NOTE, type SheetDocument } from "@/lib/report";
import { drawTable, tableStart, type Column } from "./draw-table";
import { drawHeading, flowText, HEADING_HEIGHT, makeRoom, type Flow } from "./flow";
import { run } from "./lay-text";
import { GREY } from "./page";

const columns: readonly Column[] = [
  { title: "Figure", share: 0.6 },
  { title: "Read off the photo", share: 0.4 },
];

/** What was read of the bead's width, of each photo on which toes were accepted. */
export function drawWidths(flow: Flow, { photos }: SheetDocument): void {
  photos.forEach(({ width }, i) => {
    if (!width) return;
    const rows = width.map(({ label, value }) => [[run(label, "text", 9)], [run(value, "strong", 9)]]);
    makeRoom(flow, HEADING_HEIGHT + tableStart(flow, columns, rows));
    drawHeading(flow, `Width of the bead${photos.length > 1 ? ` on photo ${i + 1}` : ""}`);
    drawTable(flow, columns, rows);
    flow.y += 3;
    flowText(flow, [run(WIDTH_NOTE, "text", 8, GREY.words)]);
    flow.y += 11;
  });
}
