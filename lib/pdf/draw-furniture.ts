import { asDecoration, drawBlock, drawRule, type Flow } from "./flow";
import { layText, run, type Run } from "./lay-text";
import { BODY_WIDTH, FOOT_TOP, GREY, LEFT, ONE_PAGE, ONE_WIDTH, RIGHT, RULE } from "./page";
import { drawQr } from "./qr";

/** 17.5 mm with its quiet zone: a phone reads it from a sheet on the wall. */
const QR_SIDE = 50;
const BESIDE_QR = QR_SIDE + 8;

export interface Furniture {
  readonly record: string;
  readonly title: string;
  readonly digest: string;
  /** Null: there is no address that leads anywhere from elsewhere, so none is printed. */
  readonly recordUrl: string | null;
}

/** Where the foot stands: its rule, its lines below that, the code's top. */
interface FootPlace {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly lines: readonly [record: number, digest: number, address: number];
  readonly codeTop: number;
}
const usual: FootPlace = {
  left: LEFT,
  right: RIGHT,
  top: FOOT_TOP,
  lines: [6, 22, 33],
  codeTop: FOOT_TOP + 2,
};
/** Lower, its code beside the last lines of the body. */
const low: FootPlace = {
  left: ONE_PAGE.left,
  right: ONE_PAGE.left + ONE_WIDTH,
  top: ONE_PAGE.footTop,
  lines: [4, 16.5, 26],
  codeTop: ONE_PAGE.codeTop,
};

/** The foot of a sheet that fits one page. */
export const drawLowFoot = (flow: Flow, furniture: Furniture): void =>
  drawFoot(flow, furniture, "page 1 of 1", low);

/** Head and foot of every page, drawn when the number of pages is known. */
export function drawFurniture(flow: Flow, furniture: Furniture): void {
  const { start, count } = flow.doc.bufferedPageRange();
  for (let page = 0; page < count; page += 1) {
    flow.doc.switchToPage(start + page);
    if (page > 0) drawRunningHead(flow, furniture);
    drawFoot(flow, furniture, `page ${page + 1} of ${count}`, usual);
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

function drawFoot(
  flow: Flow,
  { record, digest, recordUrl }: Furniture,
  pageOf: string,
  { left, right, top, lines: [first, second, third], codeTop }: FootPlace,
): void {
  const end = recordUrl === null ? right : right - BESIDE_QR;
  const width = right - left - BESIDE_QR;
  drawRule(flow, top, RULE.line, flow.ink, left, codeTop < top ? end : right);
  const pageWidth = flow.faces.width(pageOf, "heavy latin", 10.5);
  putLine(flow, run(record, "heavy", 10.5), left, top + first, width - pageWidth - 12);
  putLine(flow, run(pageOf, "heavy", 10.5), end - pageWidth, top + first, pageWidth + 2);
  const small = (text: string, below: number) =>
    putLine(flow, run(text, "text", 7.5, GREY.words), left, top + below, width);
  small(`SHA-256 of the content ${digest}`, second);
  if (recordUrl === null) return;
  small(`The record ${recordUrl}`, third);
  asDecoration(flow.doc, () => drawQr(flow.doc, recordUrl, right - QR_SIDE + 4, codeTop, QR_SIDE));
}
