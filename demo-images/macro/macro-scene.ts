import {
  createCamera,
  planeToImage,
  projectPoint,
  type Camera,
  type Matrix3,
  type Pixel,
} from "../camera/camera";
import { namedSeed } from "../noise/random";
import {
  createCard,
  createRule,
  createStrip,
  placedPoint,
  type Placement,
  type ScaleObject,
} from "../scale-objects";
import { macroSpec } from "./macro-scenarios";
import { MacroParamsSchema, type MacroParams, type MacroParamsInput } from "./macro-params";
import type { At, MacroSpec } from "./macro-spec";

/** A section laid out before the camera: the etched face at height 0, a scale object beside it. */
export interface MacroScene {
  readonly params: MacroParams;
  readonly spec: MacroSpec;
  readonly camera: Camera;
  readonly object: {
    readonly thing: ScaleObject;
    readonly placement: Placement;
    readonly aboveMm: number;
  } | null;
}

/** Height of a coupon over the bench, mm. */
export const COUPON_MM = 9;

function objectOf(params: MacroParams, spec: MacroSpec): MacroScene["object"] {
  if (params.scaleObject === "none") return null;
  const thing =
    params.scaleObject === "rule"
      ? createRule(40)
      : params.scaleObject === "card"
        ? createCard()
        : createStrip();
  const low = Math.min(...spec.plates.flat().map(([, y]) => y), ...spec.outline.map(([, y]) => y));
  return {
    thing,
    placement: { xMm: middleX(spec), vMm: low - thing.widthMm / 2 - 3.5, turnDeg: 1.4 },
    aboveMm: params.scaleAboveMm,
  };
}

function middleX({ plates }: MacroSpec): number {
  const xs = plates.flat().map(([x]) => x);
  return (Math.min(...xs) + Math.max(...xs)) / 2;
}

export function macroScene(input: MacroParamsInput): MacroScene {
  const params = MacroParamsSchema.parse(input);
  const spec = macroSpec(params.scenario, namedSeed(params.seed, params.scenario));
  const object = objectOf(params, spec);
  const widthPx = 2 * Math.round(Math.sqrt((params.megapixels * 1e6 * 4) / 3) / 2);
  const foot = object === null ? 0 : object.placement.vMm - object.thing.widthMm / 2;
  const ys = [...spec.outline.map(([, y]) => y + 3), foot];
  const middleY = (Math.min(...ys) + Math.max(...ys)) / 2;
  const camera = createCamera({
    ...params,
    widthPx,
    heightPx: 2 * Math.round((widthPx * 3) / 8),
    target: [middleX(spec), middleY, 0],
    k1: params.distortion,
    k2: -0.3 * params.distortion,
  });
  return { params, spec, camera, object };
}

export interface MacroTruth {
  readonly schemaVersion: 1;
  readonly kind: "section";
  readonly title: string;
  readonly scenario: string;
  readonly seed: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pixelOrigin: "top-left corner of the top-left pixel, upright picture";
  readonly camera: Camera;
  readonly joint: MacroSpec["joint"];
  /** Row-major 3x3 from (x mm, y mm, 1) of the etched face to pixels before lens distortion. */
  readonly faceToImage: Matrix3;
  /** Around the weld metal; the same places in mm beside it. */
  readonly outlinePx: readonly Pixel[];
  readonly outlineMm: readonly At[];
  readonly toesPx: readonly [Pixel, Pixel];
  readonly rootPx: Pixel;
  readonly edges: readonly { readonly role: string; readonly px: readonly Pixel[] }[];
  readonly scaleObject: {
    readonly kind: string;
    readonly aboveMm: number;
    readonly sizes: Readonly<Record<string, number>>;
    readonly keyPoints: readonly { readonly name: string; readonly px: Pixel; readonly mm: At }[];
  } | null;
  /** By the names of the figures of a section; mm, mm2, degrees, or a share. */
  readonly sizes: Readonly<Record<string, number>>;
  readonly imperfections: readonly {
    readonly kind: string;
    readonly px: readonly Pixel[];
    readonly closed: boolean;
    readonly sizes: Readonly<Record<string, number>>;
  }[];
}

const round = (value: number, places: number): number => Math.round(value * 10 ** places) / 10 ** places;

/** Everything that is true of the picture, in upright pixels and millimetres. */
export function macroTruth({ params, spec, camera, object }: MacroScene): MacroTruth {
  const at = ([x, y]: At, z = 0): Pixel => {
    const [u, v] = projectPoint(camera, [x, y, z]);
    return [round(u, 3), round(v, 3)];
  };
  return {
    schemaVersion: 1,
    kind: "section",
    title: spec.title,
    scenario: params.scenario,
    seed: params.seed,
    widthPx: camera.widthPx,
    heightPx: camera.heightPx,
    pixelOrigin: "top-left corner of the top-left pixel, upright picture",
    camera,
    joint: spec.joint,
    faceToImage: planeToImage(camera, { origin: [0, 0, 0], alongU: [1, 0, 0], alongV: [0, 1, 0] }),
    outlinePx: spec.outline.map((point) => at(point)),
    outlineMm: spec.outline.map(([x, y]) => [round(x, 4), round(y, 4)] as const),
    toesPx: [at(spec.toes[0]), at(spec.toes[1])],
    rootPx: at(spec.root),
    edges: spec.edges.map(({ role, points }) => ({ role, px: points.map((point) => at(point)) })),
    scaleObject: object && {
      kind: object.thing.kind,
      aboveMm: object.aboveMm,
      sizes: object.thing.sizes,
      keyPoints: object.thing.keyPoints.map(({ name, at: [a, b] }) => {
        const mm = placedPoint(object.placement, a, b);
        return { name, px: at(mm, object.aboveMm), mm: [round(mm[0], 4), round(mm[1], 4)] as const };
      }),
    },
    sizes: Object.fromEntries(Object.entries(spec.sizes).map(([name, value]) => [name, round(value, 5)])),
    imperfections: spec.faults.map(({ kind, look, points, sizes }) => ({
      kind,
      px: points.map((point) => at(point)),
      closed: look !== "line",
      sizes: Object.fromEntries(Object.entries(sizes).map(([name, value]) => [name, round(value, 4)])),
    })),
  };
}
