import { assertNever } from "@/lib/base";
import type { Point } from "@/lib/geometry";
import type { Primitive } from "@/lib/marks";
import { drawBlock, type Flow } from "./flow";
import { layText, piecesWidth, run } from "./lay-text";

/** Where a photo lies on the page: its top left corner and how many points one of its pixels takes. */
export interface PhotoFrame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly pointsPerPx: number;
}

const onPage = ({ x, y }: Point<"photo">, frame: PhotoFrame): Point<"page"> => ({
  x: frame.x + x * frame.pointsPerPx,
  y: frame.y + y * frame.pointsPerPx,
});

function setStroke(flow: Flow, colour: string, width: number, dash: readonly number[]): void {
  flow.doc.lineWidth(width).strokeColor(colour).lineCap("round").lineJoin("round");
  // pdfkit's types know one length and a space; the method takes the whole pattern.
  if (dash.length > 0) flow.doc.dash(dash as unknown as number, {});
  else flow.doc.undash();
}

/** One primitive of the marks as vectors, the same that the screen paints. */
export function drawPrimitive(flow: Flow, primitive: Primitive, frame: PhotoFrame): void {
  switch (primitive.kind) {
    case "path":
      return drawPath(flow, primitive, frame);
    case "circle":
      return drawCircle(flow, primitive, frame);
    case "plate":
      return drawPlate(flow, primitive, frame);
    case "text":
      return drawWords(flow, primitive, frame);
    default:
      assertNever(primitive);
  }
}

type Of<Kind extends Primitive["kind"]> = Extract<Primitive, { kind: Kind }>;

/** The stroke of a line, its lengths from photo pixels to points. */
function inkOf(
  flow: Flow,
  { stroke, width, dash }: Of<"path" | "circle">,
  { pointsPerPx }: PhotoFrame,
): void {
  const pattern = dash.map((length) => length * pointsPerPx);
  setStroke(flow, stroke, width * pointsPerPx, pattern);
}

function drawPath(flow: Flow, path: Of<"path">, frame: PhotoFrame): void {
  inkOf(flow, path, frame);
  path.points.forEach((point, i) => {
    const { x, y } = onPage(point, frame);
    if (i === 0) flow.doc.moveTo(x, y);
    else flow.doc.lineTo(x, y);
  });
  if (path.closed) flow.doc.closePath();
  flow.doc.stroke();
}

function drawCircle(flow: Flow, circle: Of<"circle">, frame: PhotoFrame): void {
  inkOf(flow, circle, frame);
  const { x, y } = onPage(circle.at, frame);
  flow.doc.circle(x, y, circle.radius * frame.pointsPerPx).stroke();
}

function drawPlate(flow: Flow, plate: Of<"plate">, frame: PhotoFrame): void {
  const k = frame.pointsPerPx;
  setStroke(flow, plate.stroke, plate.strokeWidth * k, []);
  const { x, y } = onPage(plate.at, frame);
  const [width, height] = [plate.width * k, plate.height * k];
  flow.doc.roundedRect(x - width / 2, y - height / 2, width, height, plate.corner * k);
  flow.doc.fillAndStroke(plate.fill, plate.stroke);
}

/**
 * Words with their middle at a height; the halo is stroked under them first. Words that the photo's edge would cut
 * are left to the table: half a size is worse than none.
 */
function drawWords(flow: Flow, words: Of<"text">, frame: PhotoFrame): void {
  const size = words.size * frame.pointsPerPx;
  const block = layText(flow.faces, [run(words.text, "strong", size, words.fill)], Infinity, { leading: 1 });
  const pieces = block.lines[0] ?? [];
  const width = piecesWidth(flow.faces, pieces);
  const { x, y } = onPage(words.at, frame);
  const left = words.anchor === "start" ? x : words.anchor === "end" ? x - width : x - width / 2;
  const top = y - block.height / 2;
  if (words.halo !== null && (left < frame.x || left + width > frame.x + frame.width)) return;
  if (words.halo !== null) {
    setStroke(flow, words.halo, words.haloWidth * frame.pointsPerPx, []);
    let at = left;
    for (const { text, font } of pieces) {
      flow.doc.font(font).fontSize(size);
      flow.doc.text(text, at, top + block.ascent, {
        lineBreak: false,
        baseline: "alphabetic",
        stroke: true,
        fill: false,
      });
      at += flow.faces.width(text, font, size);
    }
  }
  drawBlock(flow, block, left, top);
}
