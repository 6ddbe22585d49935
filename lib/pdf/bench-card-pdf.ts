import type { BenchCardDocument } from "@/lib/report";
import {
  BAR,
  BODY,
  boxHeight,
  CELL_GAP,
  CELL_PAD,
  EDGE,
  GAP,
  HEIGHT,
  layBenchCard,
  PAD,
  QR_SIDE,
  rowHeight,
  topHeight,
  WIDTH,
  type Cell,
  type Laid,
} from "./bench-card-layout";
import { collect } from "./collect";
import { openFaces } from "./faces";
import { asDecoration, drawRule, openTag, putBlock, type Flow, type Tag } from "./flow";
import type { TextBlock } from "./lay-text";
import { openDocument } from "./open-document";
import { RULE } from "./page";
import { drawQr } from "./qr";

export interface BenchCardPdfInput {
  readonly card: BenchCardDocument;
  /** Where the bead is read; the code leads there. */
  readonly recordUrl: string;
  readonly ink: string;
  /** ISO 8601. */
  readonly createdAt: string;
}

/**
 * The bench card as a tagged PDF 1.7 of one page, A5 landscape: the one change large, the settings of the next bead in
 * both units, the cautions, and a code that leads to the bead. It is set as large as everything fits.
 */
export async function benchCardPdf(input: BenchCardPdfInput): Promise<Uint8Array> {
  const { card } = input;
  const title = `Bench card after bead ${card.number}, revision ${card.revision}: ${card.title}`;
  const doc = openDocument({ title, createdAt: input.createdAt, size: [WIDTH, HEIGHT] });
  const bytes = collect(doc);
  const root = doc.struct("Document");
  doc.addStructure(root);
  doc.addPage();
  const flow: Flow = { doc, faces: openFaces(doc), ink: input.ink, root, y: EDGE };
  drawCard(flow, layBenchCard(flow.faces, card));
  asDecoration(doc, () => drawQr(doc, input.recordUrl, WIDTH - EDGE - QR_SIDE, EDGE - 6, QR_SIDE));
  root.end();
  doc.end();
  return bytes;
}

function drawCard(flow: Flow, { kicker, stop, change, heading, columns, rows, cautions }: Laid): void {
  putBlock(flow, flow.root, "P", kicker, EDGE, flow.y);
  flow.y += topHeight(kicker);
  if (stop) drawStop(flow, stop);
  drawChangeBox(flow, change);
  flow.y += GAP;
  putBlock(flow, flow.root, "H2", heading, EDGE, flow.y);
  flow.y += heading.height + 2;
  drawRule(flow, flow.y, RULE.line, flow.ink, EDGE, WIDTH - EDGE);
  flow.y += 4;
  const list = openTag(flow, flow.root, "L");
  for (const row of rows) {
    row.forEach((cell, i) => drawCell(flow, list, cell, EDGE + i * (BODY / columns), BODY / columns));
    flow.y += rowHeight(row);
  }
  list.end();
  let y = HEIGHT - EDGE - cautions.reduce((sum, block) => sum + block.height, 0);
  drawRule(flow, y - 2, RULE.hair, flow.ink, EDGE, WIDTH - EDGE);
  for (const block of cautions) {
    putBlock(flow, flow.root, "P", block, EDGE, y);
    y += block.height;
  }
}

function drawStop(flow: Flow, stop: TextBlock): void {
  const height = stop.height + 2 * PAD;
  asDecoration(flow.doc, () => {
    flow.doc.lineWidth(4).strokeColor(flow.ink).lineJoin("miter").undash();
    flow.doc.rect(EDGE + 2, flow.y + 2, BODY - 4, height - 4).stroke();
  });
  putBlock(flow, flow.root, "P", stop, EDGE + PAD, flow.y + PAD);
  flow.y += height + GAP / 2;
}

function drawChangeBox(flow: Flow, change: Laid["change"]): void {
  const [top, height] = [flow.y, boxHeight(change)];
  asDecoration(flow.doc, () => {
    flow.doc.lineWidth(RULE.box).strokeColor(flow.ink).lineJoin("miter").undash();
    flow.doc.rect(EDGE + 1.1, top + 1.1, BODY - 2.2, height - 2.2).stroke();
    flow.doc.rect(EDGE, top, BAR, height).fill(flow.ink);
  });
  flow.y += PAD;
  for (const { type, block } of change) {
    putBlock(flow, flow.root, type, block, EDGE + BAR + PAD, flow.y);
    flow.y += block.height + 3;
  }
  flow.y = top + height;
}

/** A setting as one item of a list: its name, its value, the value in the other units. */
function drawCell(
  flow: Flow,
  list: Tag,
  { label, value, other, height, isChanged }: Cell,
  x: number,
  width: number,
): void {
  if (isChanged)
    asDecoration(flow.doc, () => {
      flow.doc.lineWidth(RULE.box).strokeColor(flow.ink).lineJoin("miter").undash();
      flow.doc.rect(x + 1, flow.y, width - CELL_GAP, height + 2).stroke();
    });
  const item = openTag(flow, list, "LI");
  let y = flow.y + 2;
  for (const [type, block] of [
    ["Lbl", label],
    ["LBody", value],
    ["LBody", other],
  ] as const) {
    if (block === null) continue;
    putBlock(flow, item, type, block, x + CELL_PAD, y);
    y += block.height;
  }
  item.end();
}
