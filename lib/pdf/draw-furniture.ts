import { asDecoration, drawBlock, drawRule, type Flow } from "./flow";
import { layText, run, type Run } from "./lay-text";
import { BODY_WIDTH, FOOT_TOP, GREY, LEFT, RIGHT, RULE } from "./page";
import { drawQr } from "./qr";

/** 17.5 mm with its quiet zone: a phone reads it from a sheet on the wall. */
const QR_SIDE = 50;
const TEXT_WIDTH = BODY_WIDTH - QR_SIDE - 8;

export interface Furniture {
  readonly record: string;
  readonly title: string;
  readonly digest: string;
  /** Null: there is no address that leads anywhere from elsewhere, so none is printed. */
  readonly recordUrl: string | null;
}

/** Head and foot of every page, drawn when the number of pages is known. */
export function drawFurniture(flow: Flow, furniture: Furniture): void {
  const { start, count } = flow.doc.bufferedPageRange();
  for (let page = 0; page < count; page += 1) {
    flow.doc.switchToPage(start + page);
    if (page > 0) drawRunningHead(flow, furniture);
    drawFoot(flow, furniture, `page ${page + 1} of ${count}`);
  }
}

function putLine(flow: Flow, words: Run, x: number, y: number, width: number): void {
  const block = layText(flow.faces, [words], width, { leading: 1.2 });
  asDecoration(flow.doc, () => drawBlock(flow, block, x, y, block.lines.slice(0, 1)));
}

function drawRunningHead(flow: Flow, { record, title }: Furniture): void {
  drawRule(flow, 36, 3);
  putLine(flow, run(`${record} · ${title}`, "display", 10.5), LEFT, 41, BODY_WIDTH);
}

function drawFoot(flow: Flow, { record, digest, recordUrl }: Furniture, pageOf: string): void {
  drawRule(flow, FOOT_TOP, RULE.line);
  const right = recordUrl === null ? RIGHT : RIGHT - QR_SIDE - 8;
  const pageWidth = flow.faces.width(pageOf, "heavy latin", 10.5);
  putLine(flow, run(record, "heavy", 10.5), LEFT, FOOT_TOP + 6, TEXT_WIDTH - pageWidth - 12);
  putLine(flow, run(pageOf, "heavy", 10.5), right - pageWidth, FOOT_TOP + 6, pageWidth + 2);
  putLine(
    flow,
    run(`SHA-256 of the content ${digest}`, "text", 7, GREY.words),
    LEFT,
    FOOT_TOP + 22,
    TEXT_WIDTH,
  );
  if (recordUrl === null) return;
  putLine(flow, run(`The record ${recordUrl}`, "text", 7, GREY.words), LEFT, FOOT_TOP + 33, TEXT_WIDTH);
  asDecoration(flow.doc, () => drawQr(flow.doc, recordUrl, RIGHT - QR_SIDE + 4, FOOT_TOP + 2, QR_SIDE));
}
