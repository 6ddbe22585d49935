import type { LabelledRow, SheetDocument } from "@/lib/report";
import {
  drawHeading,
  drawRule,
  flowText,
  HEADING_HEIGHT,
  makeRoom,
  openTag,
  drawInto,
  drawBlock,
  type Flow,
  type Tag,
} from "./flow";
import { layText, run, type TextBlock } from "./lay-text";
import { CAPTION_HEIGHT, drawPhoto, photoSize, type PhotoPaint } from "./draw-photo";
import { BODY_BOTTOM, BODY_TOP, BODY_WIDTH, GREY, LEFT, RULE } from "./page";

const PHOTO_WIDTH = 318;
const PHOTO_HEIGHT = 300;
const GAP = 16;
const LABEL_WIDTH = 62;
const ROW_PAD = 1.6;

interface SetupRow {
  readonly label: TextBlock;
  readonly value: TextBlock;
  readonly height: number;
}

function setRow(flow: Flow, { label, value }: LabelledRow, width: number): SetupRow {
  const set = {
    label: layText(flow.faces, [run(label, "text", 9, GREY.words)], LABEL_WIDTH - 4, { leading: 1.2 }),
    value: layText(flow.faces, [run(value, "strong", 9)], width - LABEL_WIDTH, { leading: 1.2 }),
  };
  return { ...set, height: Math.max(set.label.height, set.value.height) + 2 * ROW_PAD };
}

function drawRow(flow: Flow, table: Tag, row: SetupRow, x: number, width: number): void {
  const line = openTag(flow, table, "TR");
  const cell = (type: "TH" | "TD", block: TextBlock, at: number) => {
    const tag = openTag(flow, line, type, type === "TH" ? { scope: "Row" } : {});
    drawInto(flow, tag, type, () => drawBlock(flow, block, at, flow.y + ROW_PAD));
    tag.end();
  };
  cell("TH", row.label, x);
  cell("TD", row.value, x + LABEL_WIDTH);
  line.end();
  flow.y += row.height;
  drawRule(flow, flow.y, RULE.hair, GREY.rule, x, x + width);
}

function drawRows(flow: Flow, rows: readonly SetupRow[], x: number, width: number): void {
  drawHeading(flow, "How it was run", x, width);
  if (rows.length === 0) {
    const none = layText(flow.faces, [run("Not recorded.", "text", 9.5)], width);
    const tag = openTag(flow, flow.root, "P");
    drawInto(flow, tag, "P", () => drawBlock(flow, none, x, flow.y));
    tag.end();
    flow.y += none.height;
    return;
  }
  const table = openTag(flow, flow.root, "Table");
  for (const row of rows) {
    makeRoom(flow, row.height);
    drawRow(flow, table, row, x, width);
  }
  table.end();
}

/** The first photo with the set-up beside it; where that column would not fit on the page, the set-up goes below. */
export function drawPhotoAndSetup(flow: Flow, sheet: SheetDocument, paint: PhotoPaint): void {
  const [photo] = sheet.photos;
  const size = photo ? photoSize(photo, PHOTO_WIDTH, PHOTO_HEIGHT) : { width: 0, height: 0 };
  const offset = photo ? size.width + GAP : 0;
  const width = BODY_WIDTH - offset;
  const rows = sheet.setup.map((row) => setRow(flow, row, width));
  const height = HEADING_HEIGHT + rows.reduce((sum, row) => sum + row.height, 0);
  makeRoom(flow, Math.min(Math.max(height, size.height + CAPTION_HEIGHT), BODY_BOTTOM - BODY_TOP));
  const top = flow.y;
  const isBeside = photo !== undefined && top + height <= BODY_BOTTOM;
  if (photo) {
    drawPhoto(flow, photo, 1, paint, { x: LEFT, y: top, ...size });
    flow.y = top + size.height + CAPTION_HEIGHT;
  }
  if (isBeside) {
    const below = flow.y;
    flow.y = top;
    drawRows(flow, rows, LEFT + offset, width);
    flow.y = Math.max(below, flow.y);
  } else {
    drawRows(
      flow,
      sheet.setup.map((row) => setRow(flow, row, BODY_WIDTH)),
      LEFT,
      BODY_WIDTH,
    );
  }
  flow.y += 6;
  for (const line of sheet.setupFindings) drawBullet(flow, line);
  flow.y += 7;
}

/** A square of ink before a line; the square is decoration, the line is the words. */
function drawBullet(flow: Flow, line: string): void {
  makeRoom(flow, 12);
  const { y } = flow;
  const page = flow.doc.bufferedPageRange().count;
  flowText(flow, [run(line, "text", 9)], { x: LEFT + 10, gap: 1.5 });
  if (page !== flow.doc.bufferedPageRange().count) return;
  flow.doc.markContent("Artifact", { type: "Layout" });
  flow.doc.rect(LEFT, y + 4, 4, 4).fill(flow.ink);
  flow.doc.endMarkedContent();
}
