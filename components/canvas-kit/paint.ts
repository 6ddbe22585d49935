import { assertNever } from "@/lib/base";
import type { Primitive } from "@/lib/marks";

export const FONT = '"Barlow", system-ui, sans-serif';

type Pen = CanvasRenderingContext2D;

function strokeWith(pen: Pen, stroke: string, width: number, dash: readonly number[]): void {
  pen.strokeStyle = stroke;
  pen.lineWidth = width;
  pen.lineCap = "round";
  pen.lineJoin = "round";
  pen.setLineDash([...dash]);
  pen.stroke();
}

/** Paints one primitive in the pen's present coordinates, which are photo pixels. The same list becomes the SVG. */
export function paintPrimitive(pen: Pen, primitive: Primitive): void {
  pen.beginPath();
  switch (primitive.kind) {
    case "path":
      primitive.points.forEach((p, i) => (i === 0 ? pen.moveTo(p.x, p.y) : pen.lineTo(p.x, p.y)));
      if (primitive.closed) pen.closePath();
      return strokeWith(pen, primitive.stroke, primitive.width, primitive.dash);
    case "circle":
      pen.arc(primitive.at.x, primitive.at.y, primitive.radius, 0, 2 * Math.PI);
      return strokeWith(pen, primitive.stroke, primitive.width, primitive.dash);
    case "plate": {
      const { at, width, height, corner } = primitive;
      pen.roundRect(at.x - width / 2, at.y - height / 2, width, height, corner);
      pen.fillStyle = primitive.fill;
      pen.fill();
      return strokeWith(pen, primitive.stroke, primitive.strokeWidth, []);
    }
    case "text":
      return paintText(pen, primitive);
    default:
      return assertNever(primitive);
  }
}

function paintText(pen: Pen, text: Extract<Primitive, { kind: "text" }>): void {
  pen.font = `600 ${text.size}px ${FONT}`;
  pen.textAlign = text.anchor === "middle" ? "center" : text.anchor;
  pen.textBaseline = "middle";
  if (text.halo !== null) {
    pen.setLineDash([]);
    pen.lineJoin = "round";
    pen.strokeStyle = text.halo;
    pen.lineWidth = text.haloWidth;
    pen.strokeText(text.text, text.at.x, text.at.y);
  }
  pen.fillStyle = text.fill;
  pen.fillText(text.text, text.at.x, text.at.y);
}

export function paintAll(pen: Pen, list: readonly Primitive[]): void {
  for (const primitive of list) paintPrimitive(pen, primitive);
}
