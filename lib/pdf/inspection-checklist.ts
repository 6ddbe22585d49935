import { lookedAt, weldChecklist, type CheckRow, type PaperUnits, type SignedRecord } from "@/lib/inspect";
import { drawTable, tableHeight, tableStart, type Column } from "./draw-table";
import { drawHeading, flowText, HEADING_HEIGHT, makeRoom, type Flow } from "./flow";
import { run, type Run } from "./lay-text";

const columns: readonly Column[] = [
  { title: "What", share: 0.13 },
  { title: "Asked", share: 0.3 },
  { title: "Seen", share: 0.45 },
  { title: "Stands", share: 0.12 },
];

/** What was asked of each weld that was looked at, against what was seen of it. */
export function drawChecklists(flow: Flow, record: SignedRecord, units: PaperUnits): void {
  for (const { id, number } of lookedAt(record.job.content, record.draft)) {
    const list = weldChecklist(record, id, units);
    const stands = agrees(record, id, list);
    const rows = list.map((row) => cells(row, stands));
    // Eight lines: whole on a page, unless somebody wrote a page full of notes.
    const [whole, start] = [tableHeight(flow, columns, rows), tableStart(flow, columns, rows)];
    makeRoom(flow, HEADING_HEIGHT + (whole < MOST_WHOLE ? whole : start));
    const open = list.filter(({ isDone }) => !isDone).length;
    drawHeading(flow, `Checklist of weld ${number}${stands ? `: ${openText(open)}` : ""}`);
    drawTable(flow, columns, rows);
    if (!stands) flowText(flow, [run(OTHERWISE, "text", 8)]);
    flow.y += 9;
  }
}

/** Points: about half a page. */
const MOST_WHOLE = 360;

const openText = (open: number): string => (open === 0 ? "all that was asked is there" : `${open} open`);

/** Records of before compared less: the paper must not say of them what was not signed. */
const OTHERWISE =
  "Signed when less of this was compared: the result that was signed stands on the first page.";

const agrees = ({ weldResults }: SignedRecord, id: string, list: readonly CheckRow[]): boolean =>
  list.every(({ isDone }) => isDone) ===
  weldResults.some((one) => one.weldId === id && one.result === "accepted");

const cells = ({ what, asked, seen, isDone }: CheckRow, stands: boolean): readonly (readonly Run[])[] => [
  [run(what, "strong", 8.5)],
  [run(asked, "text", 8.5)],
  [run(seen, "text", 8.5)],
  [run(stands ? (isDone ? "done" : "open") : "", isDone ? "text" : "strong", 8.5)],
];
