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
import { beadSections } from "./geometry/sections";
import type { Vec3 } from "./geometry/vector";
import { lastBead, type ImperfectionRecord, type PlanPoint } from "./imperfections/draft";
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
  /** The toes of the passes laid before, left and then right; only in scenes of the street. */
  readonly before?: readonly (readonly [readonly Pixel[], readonly Pixel[]])[];
}

const round = (value: number, places: number): number => Math.round(value * 10 ** places) / 10 ** places;
const roundPixel = (p: Pixel): Pixel => [round(p[0], 2), round(p[1], 2)];

function weldTruth(scene: BuiltScene, pixelAt: (p: PlanPoint) => Pixel): Truth["weld"] {
  const bead = lastBead(scene.draft);
  const { startMm, endMm, leftMm, rightMm } = bead.shape;
  const sections = beadSections({ ...scene.grid, h: scene.draft.smooth }, scene.spec.profile, bead);
  const middle = (leftMm + rightMm) / 2;
  const rounded = (value: number | null): number | null => (value === null ? null : round(value, 3));
  return {
    lengthMm: endMm - startMm,
    startPx: pixelAt([startMm, middle]),
    endPx: pixelAt([endMm, middle]),
    axisPx: sections.map((s) => pixelAt([s.xMm, (s.leftMm + s.rightMm) / 2])),
    leftToePx: sections.map((s) => pixelAt([s.xMm, s.leftMm])),
    rightToePx: sections.map((s) => pixelAt([s.xMm, s.rightMm])),
    sections: sections.map((s) => ({
      alongMm: round(s.xMm - startMm, 3),
      widthMm: round(s.widthMm, 3),
      heightMm: round(s.heightMm, 3),
      lowerLegMm: rounded(s.lowerLegMm),
      upperLegMm: rounded(s.upperLegMm),
    })),
  };
}

/** Both toes of the passes laid before, every millimetre. */
function beforeTruth({ draft }: BuiltScene, pixelAt: (p: PlanPoint) => Pixel): NonNullable<Truth["before"]> {
  return draft.beads.slice(0, -1).map((bead) => {
    const { startMm, endMm } = bead.shape;
    const cuts = Array.from({ length: Math.floor(endMm - startMm) }, (_, i) => startMm + 0.5 + i);
    const toes = cuts.flatMap((x) => {
      const at = bead.toesAt(x);
      return at === null ? [] : [[pixelAt([x, at.leftMm]), pixelAt([x, at.rightMm])] as const];
    });
    return [toes.map(([left]) => left), toes.map(([, right]) => right)] as const;
  });
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

function planesTruth(scene: BuiltScene, camera: Camera): PlaneTruth[] {
  const rolled = scene.spec.profile.facets.filter((facet) => facet.rolled && facet.name !== "root");
  return rolled.map((facet) => {
    const { origin, alongU, alongV } = facetFrame(facet);
    const homography = planeToImage(camera, { origin, alongU, alongV });
    return { name: facet.name, origin, alongU, alongV, planeToImage: homography };
  });
}

function imperfectionTruth(
  record: ImperfectionRecord,
  startMm: number,
  pixelAt: (p: PlanPoint) => Pixel,
): ImperfectionTruth {
  const xs = record.outline.map((p) => p[0] - startMm);
  return {
    kind: record.kind,
    closed: record.closed,
    outlinePx: record.outline.map(pixelAt),
    sizes: Object.fromEntries(Object.entries(record.sizes).map(([name, value]) => [name, round(value, 3)])),
    alongMm: [round(Math.min(...xs), 2), round(Math.max(...xs), 2)],
    place: record.place,
    stretch: record.stretch,
  };
}

/** Everything that is true of the picture, in upright pixels and millimetres. */
export function sceneTruth(
  scene: BuiltScene,
  camera: Camera,
  names: { scenario: string; seed: number },
): Truth {
  const { draft, spec } = scene;
  const smooth = { ...scene.grid, h: draft.smooth };
  const pixelAt = ([x, y]: PlanPoint): Pixel =>
    roundPixel(projectPoint(camera, [x, y, sampleHeight(smooth, x, y)]));
  const { startMm } = lastBead(draft).shape;
  return {
    schemaVersion: 1,
    title: spec.title,
    scenario: names.scenario,
    seed: names.seed,
    widthPx: camera.widthPx,
    heightPx: camera.heightPx,
    pixelOrigin: "top-left corner of the top-left pixel, upright picture",
    setup: spec.setup,
    camera,
    planes: planesTruth(scene, camera),
    scaleObject: objectTruth(scene, camera),
    weld: weldTruth(scene, pixelAt),
    imperfections: draft.records.map((record) => imperfectionTruth(record, startMm, pixelAt)),
    ...(spec.street !== undefined && { before: beforeTruth(scene, pixelAt) }),
  };
}
