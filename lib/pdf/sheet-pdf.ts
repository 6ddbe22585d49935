import type { ScenePalette } from "@/lib/marks";
import type { SheetDocument } from "@/lib/report";
import { collect } from "./collect";
import { drawCauses } from "./draw-causes";
import { drawChange } from "./draw-change";
import { drawFurniture, drawLowFoot } from "./draw-furniture";
import { drawHead, drawInspectorFirst } from "./draw-head";
import { drawMarks } from "./draw-marks";
import { drawMorePhotos } from "./draw-more-photos";
import { drawPhotoAndSetup } from "./draw-setup";
import { drawSections } from "./draw-sections";
import { drawVerdict } from "./draw-verdict";
import { drawWidths } from "./draw-widths";
import { openFaces } from "./faces";
import { drawHeading, drawRule, flowText, HEADING_HEIGHT, makeRoom, type Flow } from "./flow";
import { layText, run } from "./lay-text";
import { onePage } from "./one-page";
import { openDocument } from "./open-document";
import { BODY_WIDTH, RULE } from "./page";

export interface SheetPdfInput {
  readonly sheet: SheetDocument;
  /** JPEG bytes by the photo's SHA-256, upright and free of metadata; they are embedded as they are. */
  readonly photos: ReadonlyMap<string, Uint8Array>;
  /** SHA-256 of the sheet's content, 64 hex digits; printed on each page's foot. */
  readonly digest: string;
  /** Where the record is read; the code on each page leads there. */
  readonly recordUrl: string;
  readonly palette: ScenePalette;
  /** ISO 8601, written as the file's creation date: the clock is the caller's. */
  readonly createdAt: string;
}

/**
 * The sheet of one bead as a tagged PDF 1.7, A4. Lengths are in the units the document was made for. A picture that is
 * not among `photos` leaves its frame with the marks and a line that says so. The same input gives the same bytes.
 */
export async function sheetPdf(input: SheetPdfInput): Promise<Uint8Array> {
  const { sheet, digest, recordUrl } = input;
  const record = `Bead ${sheet.number}, revision ${sheet.revision}`;
  const doc = openDocument({ title: `${record}: ${sheet.title}`, createdAt: input.createdAt });
  const bytes = collect(doc);
  const faces = openFaces(doc);
  const root = doc.struct("Document");
  doc.addStructure(root);
  doc.addPage();
  const flow: Flow = { doc, faces, ink: input.palette.text, root, y: 0 };
  const drawOne = onePage(flow, sheet, { photos: input.photos, palette: input.palette });
  if (drawOne) drawOne();
  else drawBody(flow, input);
  root.end();
  (drawOne ? drawLowFoot : drawFurniture)(flow, { record, title: sheet.title, digest, recordUrl });
  doc.end();
  return bytes;
}

function drawBody(flow: Flow, { sheet, photos, palette }: SheetPdfInput): void {
  drawHead(flow, sheet);
  if (sheet.inspectorFirst) drawInspectorFirst(flow);
  drawPhotoAndSetup(flow, sheet, { photos, palette });
  drawMarks(flow, sheet);
  drawWidths(flow, sheet);
  drawChange(flow, sheet);
  drawCauses(flow, sheet);
  drawVerdict(flow, sheet);
  drawSections(flow, sheet, { photos, palette });
  if (sheet.note !== "") drawNote(flow, sheet.note);
  drawMorePhotos(flow, sheet, { photos, palette });
  drawCautions(flow, sheet.cautions);
}

function drawNote(flow: Flow, note: string): void {
  makeRoom(flow, HEADING_HEIGHT + 28);
  drawHeading(flow, "Note");
  flowText(flow, [run(note, "text", 9.5)], { breaks: true, gap: 9 });
}

/** What no sheet may be read without; kept together. */
function drawCautions(flow: Flow, cautions: readonly string[]): void {
  const runs = cautions.map((line) => [run(line, "text", 7.9)]);
  const heights = runs.map((line) => layText(flow.faces, line, BODY_WIDTH).height + 2);
  makeRoom(
    flow,
    heights.reduce((sum, height) => sum + height, 8),
  );
  drawRule(flow, flow.y, RULE.line);
  flow.y += 5;
  for (const line of runs) flowText(flow, line, { gap: 2 });
}
