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
  const k = frame.pointsPerPx;
  const { doc } = flow;
  switch (primitive.kind) {
    case "path": {
      setStroke(
        flow,
        primitive.stroke,
        primitive.width * k,
        primitive.dash.map((length) => length * k),
      );
      primitive.points.forEach((point, i) => {
        const { x, y } = onPage(point, frame);
        if (i === 0) doc.moveTo(x, y);
        else doc.lineTo(x, y);
      });
      if (primitive.closed) doc.closePath();
      doc.stroke();
      return;
    }
    case "circle": {
      setStroke(
        flow,
        primitive.stroke,
        primitive.width * k,
        primitive.dash.map((length) => length * k),
      );
      const { x, y } = onPage(primitive.at, frame);
      doc.circle(x, y, primitive.radius * k).stroke();
      return;
    }
    case "plate": {
      setStroke(flow, primitive.stroke, primitive.strokeWidth * k, []);
      const { x, y } = onPage(primitive.at, frame);
      const [width, height] = [primitive.width * k, primitive.height * k];
      doc.roundedRect(x - width / 2, y - height / 2, width, height, primitive.corner * k);
      doc.fillAndStroke(primitive.fill, primitive.stroke);
      return;
    }
    case "text":
      drawWords(flow, primitive, frame);
      return;
    default:
      assertNever(primitive);
  }
}

/**
 * Words with their middle at a height; the halo is stroked under them first. Words that the photo's edge would cut
 * are left to the table: half a size is worse than none.
 */
function drawWords(flow: Flow, words: Extract<Primitive, { kind: "text" }>, frame: PhotoFrame): void {
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
