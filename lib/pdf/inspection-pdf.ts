import { setImmediate as turn } from "node:timers/promises";
import { instrumentCells, recordSections, type SignedRecord } from "@/lib/inspect";
import { standingTitle } from "@/lib/signature";
import { collect } from "./collect";
import { drawFurniture } from "./draw-furniture";
import { openFaces } from "./faces";
import { drawTable, tableStart, type Column } from "./draw-table";
import { drawHeading, flowText, HEADING_HEIGHT, makeRoom, type Flow } from "./flow";
import { drawInspectionBead, drawRows } from "./inspection-bead";
import type { InspectionPdfInput } from "./inspection-input";
import { drawChecklists } from "./inspection-checklist";
import { drawFront, furtherSections } from "./inspection-front";
import { drawWelds, partSections } from "./inspection-welds";
import { run } from "./lay-text";
import { openDocument } from "./open-document";

/** On every page. What nobody could verify says so there too. */
function nameOf({ record: { inspection, signature }, signed }: InspectionPdfInput): string {
  const doubt =
    signed?.standing.kind === "unverified" ? `, ${standingTitle(signed.standing).toUpperCase()}` : "";
  return `Inspection ${inspection.number}, ${signature ? `revision ${signature.revision}${doubt}` : "DRAFT, not signed"}`;
}

/**
 * The inspection report as a tagged PDF 1.7, A4, drawn from the record alone: what was signed is printed, not what
 * would be found today. Its first page says what, for whom, how each weld stands and who signed. The same input gives the
 * same bytes.
 */
export async function inspectionPdf(input: InspectionPdfInput): Promise<Uint8Array> {
  const { record, digest, recordUrl } = input;
  const title = record.job.content.title;
  const doc = openDocument({ title: `${nameOf(input)}: ${title}`, createdAt: input.createdAt });
  const bytes = collect(doc);
  const root = doc.struct("Document");
  doc.addStructure(root);
  doc.addPage();
  const flow: Flow = { doc, faces: openFaces(doc), ink: input.palette.text, root, y: 0 };
  drawFront(flow, input, nameOf(input));
  drawPoints(flow, record);
  drawChanges(flow, record);
  const { alone, welds } = partSections(furtherSections(recordSections(record, input.units)));
  for (const { title: heading, rows } of alone) drawRows(flow, heading, rows);
  drawInstruments(flow, record);
  drawWelds(flow, welds);
  drawChecklists(flow, record, input.units);
  for (const bead of inWeldOrder(record)) {
    // A record may hold many beads: others have their turn between two of them.
    await turn();
    drawInspectionBead(flow, bead, record, input);
  }
  root.end();
  drawFurniture(flow, { record: nameOf(input), title, digest, recordUrl });
  doc.end();
  return bytes;
}

/** As the welds stand in the job; beads of one weld as they were run. */
function inWeldOrder({ beads, job }: SignedRecord): SignedRecord["beads"] {
  const place = (weldId: string | null): number => job.content.welds.findIndex(({ id }) => id === weldId);
  return beads.toSorted((a, b) => place(a.weldId) - place(b.weldId) || a.number - b.number);
}

function drawPoints(flow: Flow, { points, signature }: SignedRecord): void {
  if (points.length === 0) return;
  makeRoom(flow, HEADING_HEIGHT + 28);
  drawHeading(flow, "Open points and notes");
  for (const { weight, sentence } of points)
    flowText(flow, [run(weight === "open" ? "Open: " : "Note: ", "strong", 9), run(sentence, "text", 9)], {
      gap: 2,
    });
  if (signature?.acknowledgement)
    flowText(flow, [run("The signer says: ", "strong", 9), run(signature.acknowledgement, "text", 9)]);
  flow.y += 9;
}

/** What a further revision says otherwise than the one before, line by line. */
function drawChanges(flow: Flow, { signature }: SignedRecord): void {
  if (!signature || signature.revision < 2) return;
  makeRoom(flow, HEADING_HEIGHT + 40);
  drawHeading(flow, `What revision ${signature.revision} changed`);
  if (signature.changes.length === 0) flowText(flow, [run("Nothing else changed.", "text", 9)]);
  for (const line of signature.changes) flowText(flow, [run(`– ${line}`, "text", 8.5)], { gap: 1 });
  flow.y += 9;
}

const instruments: readonly Column[] = [
  { title: "Instrument", share: 0.19 },
  { title: "Kind", share: 0.16 },
  { title: "Serial number", share: 0.15 },
  { title: "Smallest step", share: 0.11 },
  { title: "Calibrated", share: 0.12 },
  { title: "Due", share: 0.12 },
  { title: "That day", share: 0.15 },
];

function drawInstruments(flow: Flow, record: SignedRecord): void {
  const rows = instrumentCells(record).map(([name = "", ...cells]) => [
    [run(name, "strong", 8.5)],
    ...cells.map((text) => [run(text, "text", 8.5)]),
  ]);
  makeRoom(flow, HEADING_HEIGHT + (rows.length > 0 ? tableStart(flow, instruments, rows) : 14));
  drawHeading(flow, "Instruments");
  if (rows.length > 0) drawTable(flow, instruments, rows);
  else flowText(flow, [run("None recorded.", "text", 9.5)]);
  flow.y += 9;
}
