import type { ImperfectionId, Place, Stretch } from "@/lib/trade";
import type { RunSetup } from "@/lib/setup";
import type { BuiltScene } from "./build-scene";
import {
  planeToImage,
  projectPoint,
  pointOnPlane,
  type Camera,
  type Matrix3,
  type Pixel,
} from "./camera/camera";
import { sampleHeight } from "./field/height-grid";
import { surfaceDistance } from "./geometry/profile";
import type { Vec3 } from "./geometry/vector";
import type { PlanPoint } from "./imperfections/draft";
import { lastBead } from "./imperfections/draft";
import { facetFrame, objectPlane, placedPoint } from "./scale-objects";

export interface PlaneTruth {
  readonly name: string;
  /** Plan-frame place of (0, 0) and unit directions of u (along the weld) and v (across the plate). */
  readonly origin: Vec3;
  readonly alongU: Vec3;
  readonly alongV: Vec3;
  /** Row-major 3x3 from (u mm, v mm, 1) to pixels before lens distortion; apply `camera.k1`, `k2` after it. */
  readonly planeToImage: Matrix3;
}

export interface SectionTruth {
  readonly alongMm: number;
  /** Toe to toe in a straight line, mm. */
  readonly widthMm: number;
  /** Face above the line that joins the toes, measured square to it, mm. */
  readonly heightMm: number;
  /** Toe to the joint's corner over the plate's surface, mm; null on work without a corner. */
  readonly lowerLegMm: number | null;
  readonly upperLegMm: number | null;
}

export interface ImperfectionTruth {
  readonly kind: ImperfectionId;
  readonly closed: boolean;
  readonly outlinePx: readonly Pixel[];
  readonly sizes: Readonly<Record<string, number>>;
  /** Distance from the start of the weld, mm. */
  readonly alongMm: readonly [number, number];
  readonly place: Place | null;
  readonly stretch: Stretch | null;
}

export interface Truth {
  readonly schemaVersion: 1;
  readonly title: string;
  readonly scenario: string;
  readonly seed: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pixelOrigin: "top-left corner of the top-left pixel, upright picture";
  readonly setup: RunSetup;
  readonly camera: Camera;
  readonly planes: readonly PlaneTruth[];
  readonly scaleObject: {
    readonly kind: string;
    readonly plane: string;
    readonly thicknessMm: number;
    readonly sizes: Readonly<Record<string, number>>;
    readonly topToImage: Matrix3;
    readonly keyPoints: readonly {
      readonly name: string;
      readonly px: Pixel;
      readonly planeMm: readonly [number, number];
    }[];
  } | null;
  readonly weld: {
    readonly lengthMm: number;
    readonly startPx: Pixel;
    readonly endPx: Pixel;
    readonly axisPx: readonly Pixel[];
    readonly leftToePx: readonly Pixel[];
    readonly rightToePx: readonly Pixel[];
    readonly sections: readonly SectionTruth[];
  };
  readonly imperfections: readonly ImperfectionTruth[];
}

const round = (value: number, places: number): number => Math.round(value * 10 ** places) / 10 ** places;
const roundPixel = (p: Pixel): Pixel => [round(p[0], 2), round(p[1], 2)];

function weldTruth(scene: BuiltScene, pixelAt: (p: PlanPoint) => Pixel): Truth["weld"] {
  const bead = lastBead(scene.draft);
  const { startMm, endMm } = bead.shape;
  const smooth = { ...scene.grid, h: scene.smooth };
  const corner =
    scene.spec.profile.facets.length === 2 || scene.spec.profile.facets[0]!.name === "lower-plate";
  const axisPx: Pixel[] = [];
  const leftToePx: Pixel[] = [];
  const rightToePx: Pixel[] = [];
  const sections: SectionTruth[] = [];
  for (let x = startMm + 1; x < endMm; x += 1) {
    const toes = bead.toesAt(x);
    if (toes === null) continue;
    const middle = (toes.leftMm + toes.rightMm) / 2;
    const zl = sampleHeight(smooth, x, toes.leftMm);
    const zr = sampleHeight(smooth, x, toes.rightMm);
    const widthMm = Math.hypot(toes.rightMm - toes.leftMm, zr - zl);
    const level = (toes.rightMm - toes.leftMm) / widthMm;
    leftToePx.push(pixelAt([x, toes.leftMm]));
    rightToePx.push(pixelAt([x, toes.rightMm]));
    axisPx.push(pixelAt([x, middle]));
    sections.push({
      alongMm: round(x - startMm, 3),
      widthMm: round(widthMm, 3),
      heightMm: round((sampleHeight(smooth, x, middle) - (zl + zr) / 2) * level, 3),
      lowerLegMm: corner ? round(Math.abs(surfaceDistance(scene.spec.profile, toes.leftMm)), 3) : null,
      upperLegMm: corner ? round(Math.abs(surfaceDistance(scene.spec.profile, toes.rightMm)), 3) : null,
    });
  }
  return {
    lengthMm: endMm - startMm,
    startPx: pixelAt([startMm, (bead.shape.leftMm + bead.shape.rightMm) / 2]),
    endPx: pixelAt([endMm, (bead.shape.leftMm + bead.shape.rightMm) / 2]),
    axisPx,
    leftToePx,
    rightToePx,
    sections,
  };
}

function objectTruth(scene: BuiltScene, camera: Camera): Truth["scaleObject"] {
  const placed = scene.spec.scaleObject;
  if (placed === null || scene.object === null) return null;
  const facets = scene.spec.profile.facets;
  const facet = placed.side === "left" ? facets[0]! : facets[facets.length - 1]!;
  const top = objectPlane(facet, scene.object);
  return {
    kind: scene.object.kind,
    plane: facet.name,
    thicknessMm: scene.object.thicknessMm,
    sizes: scene.object.sizes,
    topToImage: planeToImage(camera, top),
    keyPoints: scene.object.keyPoints.map(({ name, at }) => {
      const [u, v] = placedPoint(placed.placement, at[0], at[1]);
      return {
        name,
        px: roundPixel(projectPoint(camera, pointOnPlane(top, u, v))),
        planeMm: [round(u, 4), round(v, 4)] as const,
      };
    }),
  };
}

/** Everything that is true of the picture, in upright pixels and millimetres. */
export function sceneTruth(
  scene: BuiltScene,
  camera: Camera,
  names: { scenario: string; seed: number },
): Truth {
  const smooth = { ...scene.grid, h: scene.smooth };
  const pixelAt = ([x, y]: PlanPoint): Pixel =>
    roundPixel(projectPoint(camera, [x, y, sampleHeight(smooth, x, y)]));
  const { startMm } = lastBead(scene.draft).shape;
  const rolled = scene.spec.profile.facets.filter((facet) => facet.rolled && facet.name !== "root");
  return {
    schemaVersion: 1,
    title: scene.spec.title,
    scenario: names.scenario,
    seed: names.seed,
    widthPx: camera.widthPx,
    heightPx: camera.heightPx,
    pixelOrigin: "top-left corner of the top-left pixel, upright picture",
    setup: scene.spec.setup,
    camera,
    planes: rolled.map((facet) => {
      const { origin, alongU, alongV } = facetFrame(facet);
      return {
        name: facet.name,
        origin,
        alongU,
        alongV,
        planeToImage: planeToImage(camera, { origin, alongU, alongV }),
      };
    }),
    scaleObject: objectTruth(scene, camera),
    weld: weldTruth(scene, pixelAt),
    imperfections: scene.draft.records.map((record) => {
      const xs = record.outline.map((p) => p[0] - startMm);
      return {
        kind: record.kind,
        closed: record.closed,
        outlinePx: record.outline.map(pixelAt),
        sizes: Object.fromEntries(
          Object.entries(record.sizes).map(([name, value]) => [name, round(value, 3)]),
        ),
        alongMm: [round(Math.min(...xs), 2), round(Math.max(...xs), 2)] as const,
        place: record.place,
        stretch: record.stretch,
      };
    }),
  };
}
