import { stripLayout, type StripLayout } from "@/lib/strip";
import { collect } from "./collect";
import { openFaces, type Face } from "./faces";
import { openDocument } from "./open-document";
import { POINTS_PER_MM } from "./page";

/** Papers the strip is printed on, in mm: ISO 216 A4, and ANSI A (8.5 x 11 in). */
export const stripPapers = {
  a4: { widthMm: 210, heightMm: 297 },
  letter: { widthMm: 215.9, heightMm: 279.4 },
} as const;
export type StripPaper = keyof typeof stripPapers;

/** Where the strip's own top left corner lies on the page, mm from the page's. Clear of any printer's margin. */
export const STRIP_PLACE = { xMm: 40, yMm: 60 } as const;

const mm = (value: number): number => value * POINTS_PER_MM;

/**
 * The scale strip as a page to print: vectors at their exact size, in black. `createdAt` is ISO 8601 and goes into the
 * file alone, so that the same day gives the same bytes.
 */
export async function stripPdf(paper: StripPaper, createdAt: string): Promise<Uint8Array> {
  const { widthMm, heightMm } = stripPapers[paper];
  const doc = openDocument({
    title: "Scale strip, print at 100 %",
    createdAt,
    size: [mm(widthMm), mm(heightMm)],
    tagged: false,
  });
  const done = collect(doc);
  doc.addPage();
  const write = writer(doc);
  drawWords(write);
  doc.save().translate(mm(STRIP_PLACE.xMm), mm(STRIP_PLACE.yMm));
  drawStrip(doc, stripLayout(), write);
  doc.restore();
  doc.end();
  return done;
}

type Write = (
  text: string,
  xMm: number,
  baselineMm: number,
  sizeMm: number,
  face: Face,
  centred?: boolean,
) => void;

function writer(doc: PDFKit.PDFDocument): Write {
  const faces = openFaces(doc);
  return (text, xMm, baselineMm, sizeMm, face, centred = false) => {
    const size = mm(sizeMm);
    const pieces = faces.split(text, face);
    const widths = pieces.map((piece) => faces.width(piece.text, piece.font, size));
    let x = mm(xMm) - (centred ? widths.reduce((a, b) => a + b, 0) / 2 : 0);
    pieces.forEach((piece, i) => {
      doc.font(piece.font).fontSize(size).fillColor("#000").text(piece.text, x, mm(baselineMm), {
        lineBreak: false,
        baseline: "alphabetic",
      });
      x += widths[i] ?? 0;
    });
  };
}

/** Everything of the layout, in millimetres from the strip's corner: the layout is the only source of its sizes. */
function drawStrip(doc: PDFKit.PDFDocument, layout: StripLayout, write: Write): void {
  doc.rect(0, 0, mm(layout.lengthMm), mm(layout.widthMm)).lineWidth(0.4).dash(3, { space: 3 }).stroke("#777");
  doc.undash();
  for (const bar of [...layout.ink, ...layout.checkBars.map(({ rect }) => rect)])
    doc.rect(mm(bar.x), mm(bar.y), mm(bar.width), mm(bar.height)).fill("#000");
  for (const { text, x, y, heightMm } of layout.texts) write(text, x, y, heightMm * 1.4, "strong", true);
  for (const { rect, label } of layout.checkBars)
    write(`${label}, measured with a rule`, rect.x, rect.y + rect.height + 3.4, 2.8, "text");
}

function drawWords(write: Write): void {
  const lines = [
    "Print at 100 %, without fitting to the page, on plain matt paper.",
    "Hold a steel rule against both bars. If one is off by more than 0.3 mm, do not use this print.",
    "Cut along the dashed line. Lay the strip flat on the plate beside the weld, on the same surface.",
    "Photograph it whole, not bent, not covered. Paper burns: only on metal that is cool to the touch.",
  ];
  write("Scale strip", STRIP_PLACE.xMm, 26, 9, "heavy");
  lines.forEach((line, i) => write(line, STRIP_PLACE.xMm, 34 + i * 5, 2.9, "text"));
}
