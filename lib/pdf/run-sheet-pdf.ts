import type { GunDrawing, RunSheetDocument } from "@/lib/report";
import { collect } from "./collect";
import { openFaces } from "./faces";
import {
  asTag,
  drawBlock,
  drawHeading,
  drawRule,
  flowText,
  openTag,
  putBlock,
  type Flow,
  type Tag,
} from "./flow";
import { layText, run } from "./lay-text";
import { openDocument } from "./open-document";
import { BODY_WIDTH, GREY, LEFT, RULE } from "./page";

export interface RunSheetPdfInput {
  readonly sheet: RunSheetDocument;
  readonly ink: string;
  /** ISO 8601. */
  readonly createdAt: string;
}

const TOP = 36;
const COLUMNS = 3;
const CELL = BODY_WIDTH / COLUMNS;
const DRAWING = 90;
/** A sheet with more dials than two rows hold is set smaller, so that it stays one page. */
const scaleOf = ({ dials }: RunSheetDocument): number => (dials.length > 2 * COLUMNS ? 0.8 : 1);

/** The run sheet as a tagged PDF 1.7, A4: every dial large, the pace, the angles drawn, what comes of it. */
export async function runSheetPdf({ sheet, ink, createdAt }: RunSheetPdfInput): Promise<Uint8Array> {
  const doc = openDocument({ title: `${sheet.title}: ${sheet.line}`, createdAt });
  const bytes = collect(doc);
  const root = doc.struct("Document");
  doc.addStructure(root);
  doc.addPage();
  const flow: Flow = { doc, faces: openFaces(doc), ink, root, y: TOP + 9 };
  drawRule(flow, TOP, RULE.heavy);
  drawHead(flow, sheet);
  drawDials(flow, sheet);
  drawPaceAndAngles(flow, sheet);
  drawGives(flow, sheet);
  for (const line of sheet.limits) flowText(flow, [run(line, "strong", 9)], { gap: 1.5 });
  flow.y += 6;
  drawRule(flow, flow.y, RULE.hair);
  flow.y += 4;
  for (const line of sheet.cautions) flowText(flow, [run(line, "text", 6.6, GREY.words)], { gap: 0.5 });
  root.end();
  doc.end();
  return bytes;
}

function put(flow: Flow, type: string, text: string, size: number, face: "heavy" | "display" | "text"): void {
  const block = layText(flow.faces, [run(text, face, size)], BODY_WIDTH, { leading: 1.15 });
  putBlock(flow, flow.root, type, block, LEFT, flow.y);
  flow.y += block.height + 3;
}

function drawHead(flow: Flow, { title, line, fixed }: RunSheetDocument): void {
  put(flow, "P", title, 12, "display");
  put(flow, "H1", line, 24, "heavy");
  put(flow, "P", fixed.map(({ label, value }) => `${label}: ${value}`).join("   "), 10, "text");
  flow.y += 6;
}

/** Each dial as one item of a list: name, value, the other units, how far it may be turned and why. */
function drawDials(flow: Flow, sheet: RunSheetDocument): void {
  const { dials } = sheet;
  const scale = scaleOf(sheet);
  drawHeading(flow, "Set");
  const list = openTag(flow, flow.root, "L");
  for (let first = 0; first < dials.length; first += COLUMNS) {
    const heights = dials
      .slice(first, first + COLUMNS)
      .map((dial, i) => drawDial(flow, list, dial, LEFT + i * CELL, scale));
    flow.y += Math.max(...heights) + 6 * scale;
  }
  list.end();
}

function drawDial(
  flow: Flow,
  list: Tag,
  dial: RunSheetDocument["dials"][number],
  x: number,
  scale: number,
): number {
  const [value = "", other] = dial.values;
  const lay = (text: string, face: "heavy" | "strong" | "text", size: number, colour?: string) =>
    layText(flow.faces, [run(text, face, size, colour)], CELL - 12, { leading: 1.12 });
  const blocks = [
    ["Lbl", lay(dial.label, "text", 10, GREY.words)],
    ["LBody", lay(value, "heavy", 27 * scale)],
    ...(other === undefined ? [] : [["LBody", lay(other, "strong", 11)] as const]),
    ["LBody", lay(`from ${dial.range}`, "strong", 9.5)],
    ["LBody", lay(dial.why, "text", 8 * scale, GREY.words)],
  ] as const;
  const item = openTag(flow, list, "LI");
  let y = flow.y;
  for (const [type, block] of blocks) {
    putBlock(flow, item, type, block, x, y);
    y += block.height;
  }
  item.end();
  return y - flow.y;
}

function drawPaceAndAngles(flow: Flow, sheet: RunSheetDocument): void {
  const { pace, drawings } = sheet;
  drawHeading(flow, "Pace and gun");
  const top = flow.y;
  const words = layText(flow.faces, [run(pace.length, "text", 11, GREY.words)], CELL - 12);
  const seconds = layText(flow.faces, [run(pace.seconds, "heavy", 46 * scaleOf(sheet))], CELL - 12, {
    leading: 1.05,
  });
  putBlock(flow, flow.root, "P", words, LEFT, top);
  putBlock(flow, flow.root, "P", seconds, LEFT, top + words.height);
  const each = (BODY_WIDTH - CELL) / Math.max(2, drawings.length);
  drawings.forEach((drawing, i) => drawGun(flow, drawing, LEFT + CELL + i * each, top, each));
  flow.y = top + DRAWING + 22;
}

function drawGun(
  flow: Flow,
  { title, angle, strokes, labels = [] }: GunDrawing,
  x: number,
  y: number,
  width: number,
): void {
  const scale = DRAWING / 100;
  asTag(
    flow,
    flow.root,
    "Figure",
    () => {
      for (const { kind, points } of strokes) {
        const [start, ...rest] = points.map(([px, py]) => [x + px * scale, y + py * scale] as const);
        flow.doc.lineJoin("miter").lineCap("butt").strokeColor(flow.ink).undash();
        flow.doc.moveTo(...start!);
        for (const point of rest) flow.doc.lineTo(...point);
        if (kind === "plate") flow.doc.fill(GREY.rule);
        else {
          if (kind === "square") flow.doc.dash(4, { space: 3 });
          flow.doc.lineWidth(kind === "gun" ? 7 : kind === "pass" ? 0.8 : 1.4).stroke();
        }
      }
      flow.doc.undash();
      for (const { at, text } of labels) drawNumber(flow, text, x + at[0] * scale, y + at[1] * scale);
    },
    `${title} ${angle}`,
  );
  const block = layText(flow.faces, [run(`${title} `, "text", 10), run(angle, "heavy", 14)], width - 8);
  putBlock(flow, flow.root, "P", block, x, y + DRAWING + 2);
}

/** The number of a pass, about its middle. */
function drawNumber(flow: Flow, text: string, x: number, y: number): void {
  const block = layText(flow.faces, [run(text, "heavy", 7)], 20);
  drawBlock(flow, block, x - 2, y - block.height / 2);
}

/** What comes of it in two columns. */
function drawGives(flow: Flow, { gives }: RunSheetDocument): void {
  drawHeading(flow, "What comes of it");
  const half = BODY_WIDTH / 2;
  const rows = Math.ceil(gives.length / 2);
  const height = 15;
  gives.forEach(({ label, value, range }, i) => {
    const x = LEFT + (i < rows ? 0 : half);
    const text = [
      run(`${label} `, "text", 10),
      run(value, "heavy", 11),
      run(range ? `  ${range}` : "", "text", 9, GREY.words),
    ];
    putBlock(flow, flow.root, "P", layText(flow.faces, text, half - 8), x, flow.y + (i % rows) * height);
  });
  flow.y += rows * height + 6;
}
