import type { CardSheetDocument } from "@/lib/report";
import { collect } from "./collect";
import { openFaces } from "./faces";
import { drawHeading, drawRule, flowText, makeRoom, openTag, putBlock, type Flow } from "./flow";
import { layText, run } from "./lay-text";
import { openDocument } from "./open-document";
import { BODY_WIDTH, GREY, LEFT, RULE } from "./page";

export interface CardPdfInput {
  readonly sheet: CardSheetDocument;
  readonly ink: string;
  /** ISO 8601. */
  readonly createdAt: string;
}

const TOP = 36;
const COLUMNS = 4;
const CELL = BODY_WIDTH / COLUMNS;

/** A shop's card as a tagged PDF 1.7, A4: that it is no qualified procedure first, then the ranges large. */
export async function cardPdf({ sheet, ink, createdAt }: CardPdfInput): Promise<Uint8Array> {
  const doc = openDocument({ title: sheet.title, createdAt });
  const bytes = collect(doc);
  const root = doc.struct("Document");
  doc.addStructure(root);
  doc.addPage();
  const flow: Flow = { doc, faces: openFaces(doc), ink, root, y: TOP + 9 };
  drawRule(flow, TOP, RULE.heavy);
  const head = layText(flow.faces, [run(sheet.title, "heavy", 21)], BODY_WIDTH, { leading: 1.15 });
  putBlock(flow, root, "H1", head, LEFT, flow.y);
  flow.y += head.height + 3;
  flowText(flow, [run(sheet.line, "display", 12)]);
  flowText(flow, [run(sheet.statement, "strong", 9)], { gap: 5 });
  flowText(flow, [run(sheet.fixed.map(({ label, value }) => `${label}: ${value}`).join("   "), "text", 9)], {
    gap: 5,
  });
  drawHeading(flow, "Ranges");
  drawRanges(flow, sheet);
  flowText(flow, [run(sheet.dialsNote, "text", 8, GREY.words)], { gap: 6 });
  drawRows(flow, "Heat", sheet.heat);
  drawRows(flow, "Steel", sheet.steel);
  flowText(flow, [run(sheet.steelNote, "text", 8, GREY.words)], { gap: 6 });
  drawRows(flow, sheet.essentialsTitle, sheet.essentials);
  if (sheet.note) drawRows(flow, "Note", [{ label: "", value: sheet.note, note: null }]);
  for (const line of sheet.cautions) flowText(flow, [run(line, "text", 6.6, GREY.words)], { gap: 0.5 });
  root.end();
  doc.end();
  return bytes;
}

/** Each dial as one item of a list: name, between what it may stand, where it stood. */
function drawRanges(flow: Flow, { dials }: CardSheetDocument): void {
  const list = openTag(flow, flow.root, "L");
  for (let first = 0; first < dials.length; first += COLUMNS) {
    const heights = dials.slice(first, first + COLUMNS).map(({ label, value, range }, i) => {
      const item = openTag(flow, list, "LI");
      const blocks = [
        ["Lbl", layText(flow.faces, [run(label, "text", 9, GREY.words)], CELL - 8)],
        ["LBody", layText(flow.faces, [run(range, "heavy", 14)], CELL - 8, { leading: 1.15 })],
        ["LBody", layText(flow.faces, [run(value && `begin at ${value}`, "text", 8)], CELL - 8)],
      ] as const;
      let y = flow.y;
      for (const [type, block] of blocks) {
        putBlock(flow, item, type, block, LEFT + i * CELL, y);
        y += block.height;
      }
      item.end();
      return y - flow.y;
    });
    flow.y += Math.max(...heights) + 5;
  }
  list.end();
}

function drawRows(flow: Flow, title: string, rows: CardSheetDocument["heat"]): void {
  if (rows.length === 0) return;
  makeRoom(flow, 40);
  drawHeading(flow, title);
  for (const { label, value, note } of rows)
    flowText(
      flow,
      [
        run(label ? `${label}  ` : "", "text", 9),
        run(value, "strong", 9),
        run(note ? `  ${note}` : "", "text", 7.5, GREY.words),
      ],
      { gap: 1 },
    );
  flow.y += 5;
}
