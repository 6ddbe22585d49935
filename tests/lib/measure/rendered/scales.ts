import type { RenderedScene } from "@/demo-images";
import type { Scale } from "@/lib/marks";
import type { Point } from "@/lib/geometry";
import { findStrip } from "@/lib/strip";
import type { Hand } from "./figures";
import type { SceneFrame } from "./scene-frame";

export const scaleKinds = ["two-points", "rectangle", "edges", "disc", "strip"] as const;
export type ScaleKind = (typeof scaleKinds)[number];

/** What a person does to set a scale: picks places (each call a new hand) and states a length. */
export interface ScaleSetter {
  readonly kind: ScaleKind;
  /** Exact places of the picks, to see whether they are in view. */
  readonly places: readonly Point[];
  readonly set: (pick: Hand) => Scale;
}

/**
 * The scales that the object in this photo allows. `statedFactor` is what the stated length is out by; the strip is not
 * picked but found in the rendered pixels, and null when it is refused.
 */
export function setters(
  photo: RenderedScene,
  frame: SceneFrame,
  statedFactor: number,
): readonly (ScaleSetter | null)[] {
  const object = photo.truth.scaleObject!;
  const places = object.keyPoints.map(({ planeMm: [u, v] }) => ({ u, v }));
  const shoot = ({ u, v }: { u: number; v: number }): Point => frame.shoot(u, v, object.thicknessMm);
  const points = places.map(shoot);
  switch (object.kind) {
    case "rule": {
      const [a, b] = [points[0]!, points.at(-1)!];
      const lengthMm = object.sizes["graduatedLengthMm"]! * statedFactor;
      return [
        {
          kind: "two-points",
          places: [a, b],
          set: (pick) => ({ kind: "two-points", a: pick(a), b: pick(b), lengthMm }),
        },
      ];
    }
    case "card":
      return [card(points, object.sizes, statedFactor)];
    case "disc": {
      const { u, v } = places[0]!;
      const radius = object.sizes["diameterMm"]! / 2;
      const rim = Array.from({ length: 12 }, (_, i) => (Math.PI * i) / 6).map((t) =>
        shoot({ u: u + radius * Math.cos(t), v: v + radius * Math.sin(t) }),
      );
      const diameterMm = 2 * radius * statedFactor;
      return [
        {
          kind: "disc",
          places: rim,
          set: (pick) => ({ kind: "disc", rim: rim.map((at) => pick(at)), diameterMm }),
        },
      ];
    }
    case "strip":
      return [found(photo, frame, points, statedFactor), outerCorners(points, statedFactor)];
    default:
      throw new Error(object.kind);
  }
}

/** Two picks on the straight of each edge; the corners are round. */
function card(
  corners: readonly Point[],
  sizes: Readonly<Record<string, number>>,
  statedFactor: number,
): ScaleSetter {
  const on = (from: Point, to: Point, share: number): Point => ({
    x: from.x + share * (to.x - from.x),
    y: from.y + share * (to.y - from.y),
  });
  const edges = corners.map((from, i): [Point, Point] => {
    const to = corners[(i + 1) % 4]!;
    return [on(from, to, 0.1), on(from, to, 0.9)];
  });
  return {
    kind: "edges",
    places: edges.flat(),
    set: (pick) => ({
      kind: "edges",
      edges: edges.map(([a, b]) => [pick(a), pick(b)]),
      widthMm: sizes["lengthMm"]! * statedFactor,
      heightMm: sizes["widthMm"]! * statedFactor,
    }),
  };
}

/** The outermost corners of the strip's two markers, picked by hand: a rectangle of known size, 114 by 16 mm. */
function outerCorners(points: readonly Point[], statedFactor: number): ScaleSetter {
  const [a, b, c, d] = [points[0]!, points[5]!, points[6]!, points[3]!];
  return {
    kind: "rectangle",
    places: [a, b, c, d],
    set: (pick) => ({
      kind: "rectangle",
      corners: [pick(a), pick(b), pick(c), pick(d)],
      widthMm: 114 * statedFactor,
      heightMm: 16 * statedFactor,
    }),
  };
}

/** Found in the rendered picture itself, without a click. */
function found(
  photo: RenderedScene,
  { enlarged }: SceneFrame,
  places: readonly Point[],
  statedFactor: number,
): ScaleSetter | null {
  const strip = findStrip(rgbaOf(photo));
  if (!strip.ok) return null;
  const { corners, cornerSigmaPx } = strip.value;
  return {
    kind: "strip",
    places,
    set: () => ({
      kind: "strip",
      corners: corners.map((corner) => ({ ...corner, x: enlarged * corner.x, y: enlarged * corner.y })),
      cornerSigmaPx: enlarged * cornerSigmaPx,
      printFactor: statedFactor,
    }),
  };
}

export function rgbaOf({ rgb, width, height }: Pick<RenderedScene, "rgb" | "width" | "height">) {
  const data = new Uint8ClampedArray(4 * width * height).fill(255);
  for (let i = 0; i < width * height; i++) data.set(rgb.subarray(3 * i, 3 * i + 3), 4 * i);
  return { width, height, data };
}
