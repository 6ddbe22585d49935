import { layText, piecesWidth, run, type Run, type TextBlock } from "./lay-text";
import type { Faces } from "./faces";
import { BODY_BOTTOM, BODY_TOP, BODY_WIDTH, LEFT, RIGHT, RULE } from "./page";

/** pdfkit's element of the structure tree that screen readers walk. */
export type Tag = ReturnType<PDFKit.PDFDocument["struct"]>;

/** The sheet while it is being set: the document, and how far down its last page is filled. */
export interface Flow {
  readonly doc: PDFKit.PDFDocument;
  readonly faces: Faces;
  readonly ink: string;
  readonly root: Tag;
  y: number;
}

/** Begins a new page unless `height` more points fit on this one. */
export function makeRoom(flow: Flow, height: number): void {
  if (flow.y + height <= BODY_BOTTOM || flow.y === BODY_TOP) return;
  flow.doc.addPage();
  flow.y = BODY_TOP;
}

/** Rules, bars and page furniture: a screen reader passes them by. */
export function asDecoration(doc: PDFKit.PDFDocument, draw: () => void): void {
  doc.markContent("Artifact", { type: "Layout" });
  draw();
  doc.endMarkedContent();
}

/** A new element under `parent`; whoever asks for it ends it. */
export function openTag(
  flow: Flow,
  parent: Tag,
  type: string,
  options: { alt?: string; scope?: string } = {},
): Tag {
  // pdfkit knows `scope` (table headings); its types do not.
  const tag = flow.doc.struct(type, options as { alt?: string });
  parent.add(tag);
  return tag;
}

/** What `draw` draws, as content of an open element. */
export function drawInto(flow: Flow, tag: Tag, type: string, draw: () => void): void {
  tag.add(flow.doc.markStructureContent(type));
  draw();
  flow.doc.endMarkedContent();
}

/** One element with one piece of content. */
export function asTag(flow: Flow, parent: Tag, type: string, draw: () => void, alt?: string): void {
  const tag = openTag(flow, parent, type, alt === undefined ? {} : { alt });
  drawInto(flow, tag, type, draw);
  tag.end();
}

export function drawRule(
  flow: Flow,
  y: number,
  width: number,
  colour = flow.ink,
  x = LEFT,
  x2 = RIGHT,
): void {
  asDecoration(flow.doc, () => {
    flow.doc.lineWidth(width).strokeColor(colour).undash().lineCap("butt");
    flow.doc.moveTo(x, y).lineTo(x2, y).stroke();
  });
}

/** Draws lines of a block with their top left corner at x, y. The caller has opened an element. */
export function drawBlock(
  flow: Flow,
  block: TextBlock,
  x: number,
  y: number,
  lines: TextBlock["lines"] = block.lines,
): void {
  lines.forEach((line, i) => {
    let at = x;
    for (const piece of line) {
      flow.doc
        .font(piece.font)
        .fontSize(piece.size)
        .fillColor(piece.colour ?? flow.ink);
      flow.doc.text(piece.text, at, y + i * block.lineHeight + block.ascent, {
        lineBreak: false,
        baseline: "alphabetic",
      });
      at += piecesWidth(flow.faces, [piece]);
    }
  });
}

/** A block as one element, at x, y. */
export function putBlock(
  flow: Flow,
  parent: Tag,
  type: string,
  block: TextBlock,
  x: number,
  y: number,
): void {
  asTag(flow, parent, type, () => drawBlock(flow, block, x, y));
}

/** A paragraph across the page that may break between lines onto the next. */
export function flowText(
  flow: Flow,
  runs: readonly Run[],
  { breaks = false, gap = 3, x = LEFT }: { breaks?: boolean; gap?: number; x?: number } = {},
): void {
  const block = layText(flow.faces, runs, BODY_WIDTH - (x - LEFT), { breaks });
  const tag = openTag(flow, flow.root, "P");
  let rest = block.lines;
  while (rest.length > 0) {
    makeRoom(flow, block.lineHeight);
    const fitting = Math.max(1, Math.floor((BODY_BOTTOM - flow.y) / block.lineHeight + 1e-9));
    const now = rest.slice(0, fitting);
    drawInto(flow, tag, "P", () => drawBlock(flow, block, x, flow.y, now));
    flow.y += now.length * block.lineHeight;
    rest = rest.slice(fitting);
  }
  tag.end();
  flow.y += gap;
}

export const HEADING_HEIGHT = 24;

/** A section's heading over a rule, with its top at flow.y; moves on below it. */
export function drawHeading(flow: Flow, text: string, x = LEFT, width = BODY_WIDTH): void {
  const block = layText(flow.faces, [run(text, "heavy", 14.5)], width, { leading: 1.15 });
  putBlock(flow, flow.root, "H2", block, x, flow.y);
  drawRule(flow, flow.y + block.height + 1.5, RULE.line, flow.ink, x, x + width);
  flow.y += block.height + 6;
}
