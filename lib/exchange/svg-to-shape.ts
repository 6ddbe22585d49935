import { fail, issue, ok, type Result } from "@/lib/base";
import { MarkShapeSchema, type MarkShapeData } from "@/lib/marks";
import type { ExchangeIssue } from "./issue";
import { readNumber, readNumbers } from "./svg-numbers";
import { pathPoints } from "./svg-path";
import type { Frame } from "./shape-to-svg";
import { svgArea } from "./svg-area";
import type { Tag } from "./svg-tags";

interface XY {
  readonly x: number;
  readonly y: number;
}
/** From the SVG's own frame to photo pixels: (at - from) times by, per axis. */
interface ToPhoto {
  readonly from: XY;
  readonly by: XY;
}

const shapeIssue = (what: string) => fail(issue("svg-shape" as const, [], { what }));
const unreadable = (problem: string) => fail(issue("svg-unreadable" as const, [], { problem }));

/**
 * The value of an SvgSelector as a mark's shape in photo pixels. The recommendation has the SVG scaled to the full
 * size of the picture, so a view box of another size is scaled; the same size leaves every number as it was.
 * Issues: `svg-too-large`, `svg-refused`, `svg-unreadable`, `svg-shape`.
 */
export function svgToShape(text: string, frame: Frame): Result<MarkShapeData, ExchangeIssue> {
  const area = svgArea(text);
  if (!area.ok) return area;
  const toPhoto = frameOf(area.value.root, frame);
  if (!toPhoto) return unreadable("its view box is not four numbers with a size");
  const shape = geometry(area.value.shape, toPhoto);
  if (!shape.ok) return shape;
  const parsed = MarkShapeSchema.safeParse(shape.value);
  return parsed.success
    ? ok(parsed.data)
    : shapeIssue("coordinates, a size or a number of points out of bounds");
}

function frameOf(root: Tag, { widthPx, heightPx }: Frame): ToPhoto | null {
  const viewBox = root.attributes.get("viewBox");
  const size = [root.attributes.get("width"), root.attributes.get("height")].map((text) =>
    readNumber(text?.replace(/px$/, "")),
  );
  const canvas = size.every((n) => n !== null) ? [0, 0, ...size] : [0, 0, widthPx, heightPx];
  const box = viewBox === undefined ? canvas : readNumbers(viewBox);
  if (box?.length !== 4) return null;
  const [x = 0, y = 0, width = 0, height = 0] = box.map((n) => n ?? 0);
  if (!(width > 0 && height > 0)) return null;
  return { from: { x, y }, by: { x: widthPx / width, y: heightPx / height } };
}

function geometry({ name, attributes }: Tag, toPhoto: ToPhoto): Result<MarkShapeData, ExchangeIssue> {
  const place = ({ x, y }: XY): XY => ({
    x: (x - toPhoto.from.x) * toPhoto.by.x,
    y: (y - toPhoto.from.y) * toPhoto.by.y,
  });
  const value = (key: string): number | null => readNumber(attributes.get(key) ?? "0");
  switch (name) {
    case "circle": {
      const [x, y, r] = [value("cx"), value("cy"), value("r")];
      if (x === null || y === null || r === null) return unreadable("a circle without numbers");
      const { by } = toPhoto;
      if (by.x !== by.y) return shapeIssue("a circle in a frame of other proportions than the photo");
      return ok({ kind: "point", at: place({ x, y }), radius: r === 0 ? null : r * by.x });
    }
    case "polyline":
    case "polygon": {
      const points = pairUp(readNumbers(attributes.get("points") ?? ""));
      if (!points) return unreadable("points that are not pairs of numbers");
      return ok({ kind: name === "polyline" ? "line" : "outline", points: points.map(place) });
    }
    case "rect": {
      const [x, y, w, h] = [value("x"), value("y"), value("width"), value("height")];
      if (x === null || y === null || w === null || h === null) return unreadable("a rect without numbers");
      if (!(w > 0 && h > 0)) return shapeIssue("a rectangle without a size");
      const corners = [
        { x, y },
        { x: x + w, y },
        { x: x + w, y: y + h },
        { x, y: y + h },
      ];
      return ok({ kind: "outline", points: corners.map(place) });
    }
    case "path":
      return pathShape(attributes.get("d") ?? "", place);
    default:
      return shapeIssue(`an element "${name}"`);
  }
}

function pathShape(d: string, place: (at: XY) => XY): Result<MarkShapeData, ExchangeIssue> {
  const path = pathPoints(d);
  if (!path.ok) return path;
  const { points, closed } = path.value;
  const [first] = points;
  if (!first) return shapeIssue("an empty path");
  if (points.every(({ x, y }) => x === first.x && y === first.y))
    return ok({ kind: "point", at: place(first), radius: null });
  return ok({ kind: closed ? "outline" : "line", points: points.map(place) });
}

function pairUp(numbers: readonly number[] | null): readonly XY[] | null {
  if (!numbers || numbers.length % 2 === 1) return null;
  return numbers.flatMap((x, i) => (i % 2 === 0 ? [{ x, y: numbers[i + 1] ?? NaN }] : []));
}
