import type { RenderedScene } from "@/demo-images";
import { type Calibration, type Quantity } from "@/lib/measure";
import { measureArea, measureEqualCircle, measureLength, measureSpot } from "@/lib/measure/figures";
import type { Point } from "@/lib/geometry";
import type { SceneFrame } from "./scene-frame";

/** A hand at a place; it views at a zoom of its own unless one is handed in. */
export type Hand = (at: Point, grainPx?: number) => Point & { grainPx: number };

export const figureKinds = ["length", "width", "diameter", "area", "spot"] as const;
export type FigureKind = (typeof figureKinds)[number];

/** Something in the photo whose true size is known, and how a person would measure it. */
export interface TrueFigure {
  readonly kind: FigureKind;
  readonly truth: number;
  readonly places: readonly Point[];
  readonly measure: (calibration: Calibration, pick: Hand) => Quantity;
}

/**
 * Marks from 2 mm below the plane of the scale, as at the foot of an undercut, to 2 mm above, as on the face of a bead, in
 * the distribution that the product states: all the picks of one mark at one height. The width is that of the rendered bead, from toe to toe, where both toes lie on that plate.
 */
export function drawFigure(
  kind: FigureKind,
  photo: RenderedScene,
  frame: SceneFrame,
  random: () => number,
): TrueFigure | null {
  const span = (low: number, high: number): number => low + (high - low) * random();
  const { truth } = photo;
  const objectV = truth.scaleObject!.keyPoints[0]!.planeMm[1];
  const u = span(-25, 25);
  // On a plate that ends at the joint the marks lie on this side of it.
  const v = truth.scaleObject!.plane === "plate" ? span(-12, 12) : Math.sign(objectV) * span(1, 12);
  const h = truth.scaleObject!.thicknessMm + span(-2, 2);
  if (kind === "width") return width(photo, frame, random);
  if (kind === "length") {
    const reach = span(3, 40);
    const turn = span(0, 2 * Math.PI);
    const end = (s: number): Point =>
      frame.shoot(u + (s * reach * Math.cos(turn)) / 2, v + (s * reach * Math.sin(turn)) / 2, h);
    const ends = [end(-1), end(1)];
    return {
      kind,
      truth: reach,
      places: ends,
      measure: (c, pick) =>
        measureLength(
          c,
          ends.map((at) => pick(at)),
        ),
    };
  }
  const d = span(2, 8);
  const rim = (t: number): Point => frame.shoot(u + (d / 2) * Math.cos(t), v + (d / 2) * Math.sin(t), h);
  if (kind === "spot") {
    const [middle, edge] = [frame.shoot(u, v, h), rim(span(0, 2 * Math.PI))];
    return { kind, truth: d, places: [middle, edge], measure: (c, pick) => spot(c, pick, middle, edge) };
  }
  const corners = Array.from({ length: 12 }, (_, i) => rim((Math.PI * i) / 6));
  // The outline as drawn is a polygon of twelve sides.
  const area = ((12 * d * d) / 8) * Math.sin(Math.PI / 6);
  return kind === "area"
    ? {
        kind,
        truth: area,
        places: corners,
        measure: (c, pick) =>
          measureArea(
            c,
            corners.map((at) => pick(at)),
          ),
      }
    : {
        kind,
        truth: 2 * Math.sqrt(area / Math.PI),
        places: corners,
        measure: (c, pick) =>
          measureEqualCircle(
            c,
            corners.map((at) => pick(at)),
          ),
      };
}

/** Drawn in one gesture, so both its picks have one zoom. */
function spot(calibration: Calibration, pick: Hand, middle: Point, edge: Point): Quantity {
  const at = pick(middle);
  const rim = pick(edge, at.grainPx);
  return measureSpot(calibration, at, Math.hypot(rim.x - at.x, rim.y - at.y));
}

function width({ truth }: RenderedScene, { enlarged }: SceneFrame, random: () => number): TrueFigure | null {
  if (truth.scaleObject!.plane !== "plate") return null;
  const { sections, leftToePx, rightToePx } = truth.weld;
  const i = Math.floor(random() * sections.length);
  const toes = [leftToePx[i]!, rightToePx[i]!].map(([x, y]) => ({ x: enlarged * x, y: enlarged * y }));
  return {
    kind: "width",
    truth: sections[i]!.widthMm,
    places: toes,
    measure: (c, pick) =>
      measureLength(
        c,
        toes.map((at) => pick(at)),
      ),
  };
}
