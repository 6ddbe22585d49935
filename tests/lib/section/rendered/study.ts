import {
  macroNames,
  macroTruthOf,
  projectPoint,
  renderMacro,
  type MacroName,
  type MacroParamsInput,
  type MacroTruth,
  type RenderedMacro,
} from "@/demo-images";
import type { Point } from "@/lib/geometry";
import type { PhotoPoint, Scale } from "@/lib/marks";
import { calibrate, defaultMeasureOptions, type MeasureOptions } from "@/lib/measure";
import { measureSection, sectionFigureIds, type SectionDrawing, type SectionFigureId } from "@/lib/section";
import { findStrip } from "@/lib/strip";
import { chance, normal } from "../../measure/camera";
import { phoneFocalShare } from "../../measure/rendered/assumed";
import { rgbaOf } from "../../measure/rendered/scales";
import type { Reading } from "../../measure/rendered/study";
import { pickPlaces } from "./pick-places";

export const sectionScales = ["rule", "card", "strip"] as const;
export type SectionScale = (typeof sectionScales)[number];

/** One figure of one section, read once by a hand of the stated steadiness and once by one half as steady. */
export interface SectionCase {
  readonly photo: number;
  readonly scenario: MacroName;
  readonly scale: SectionScale;
  readonly figure: SectionFigureId;
  readonly truth: number;
  readonly unit: string;
  readonly stated: Reading;
  readonly doubled: Reading;
}

export interface SectionStudy {
  readonly cases: readonly SectionCase[];
  readonly sections: number;
  /** Figures with a truth that the steady hand got no answer for. */
  readonly unread: readonly string[];
  readonly stripsRefused: number;
}

export interface SectionStudySize {
  readonly sections: Readonly<Record<SectionScale, number>>;
  /** Of the strip, which is found in the pixels; the others are picked, and their pictures need not be drawn. */
  readonly megapixels: number;
  readonly seed: number;
  /** Seed of the first coupon's shape; the next ones follow. */
  readonly firstShape: number;
}

/** What the ordinary run goes through; the deep run takes the small study, which is twice as large. */
export const ordinarySectionStudy: SectionStudySize = {
  sections: { rule: 18, card: 4, strip: 1 },
  megapixels: 0.4,
  seed: 17639,
  firstShape: 1,
};
export const smallSectionStudy: SectionStudySize = {
  sections: { rule: 36, card: 36, strip: 4 },
  megapixels: 0.6,
  seed: 17639,
  firstShape: 1,
};
export const fullSectionStudy: SectionStudySize = {
  sections: { rule: 144, card: 144, strip: 24 },
  megapixels: 1,
  seed: 20261126,
  firstShape: 1,
};
/** Coupons, cameras and hands that nobody looked at while the figures were worked out. */
export const keptBackSectionStudy: SectionStudySize = {
  ...fullSectionStudy,
  seed: 40961,
  firstShape: 10_001,
};

/** Width of the photo that the person marks, px: the truth of a smaller picture is enlarged to it. */
const PHOTO_WIDTH_PX = 4000;
/** The scale object is laid level with the etched face, within this much to either side. */
const LEVEL_MM = 0.5;

function drawParams(
  scenario: MacroName,
  scale: SectionScale,
  seed: number,
  megapixels: number,
  random: () => number,
): MacroParamsInput {
  const span = (low: number, high: number): number => low + (high - low) * random();
  const share = phoneFocalShare * (1 + 0.1 * Math.max(-2, Math.min(2, normal(random))));
  const fieldWidthMm = scale === "rule" ? span(66, 90) : scale === "card" ? span(105, 130) : span(135, 150);
  const cornerShare = 0.003 * normal(random);
  const corner = 0.625 / share;
  return {
    scenario,
    seed,
    megapixels,
    scaleObject: scale,
    scaleAboveMm: span(-LEVEL_MM, LEVEL_MM),
    // Two points on a rule see no tilt: held square, as the product assumes of them.
    tiltDeg: scale === "rule" ? Math.min(20, 5 * Math.hypot(normal(random), normal(random))) : span(0, 25),
    azimuthDeg: span(-180, 180),
    rollDeg: span(-8, 8),
    distanceMm: Math.max(40, fieldWidthMm * share),
    fieldWidthMm,
    distortion: cornerShare / (corner ** 2 * (1 - 0.3 * corner ** 2)),
  };
}

/** Picks with the error of a hand at a zoom of its own. */
export type Hand = (at: Point) => PhotoPoint;

export function sectionStudy(size: SectionStudySize): SectionStudy {
  const random = chance(size.seed);
  const cases: SectionCase[] = [];
  const unread: string[] = [];
  let [sections, stripsRefused] = [0, 0];
  for (const scale of sectionScales)
    for (let i = 0; i < size.sections[scale]; i++) {
      const scenario = macroNames[i % macroNames.length]!;
      const params = drawParams(scenario, scale, size.firstShape + i, size.megapixels, random);
      const photo: RenderedMacro | null = scale === "strip" ? renderMacro(params) : null;
      const truth = photo?.truth ?? macroTruthOf(params);
      const setter = scaleSetter(
        truth,
        photo,
        1 + defaultMeasureOptions.statedLengthRelativeU * normal(random),
      );
      if (setter === null) stripsRefused++;
      else {
        const hands = [1, 2].map((factor) => readOnce(truth, setter, factor, random));
        cases.push(...casesOf(truth, sections, scenario, scale, hands[0]!, hands[1]!, unread));
      }
      sections++;
    }
  return { cases, sections, unread, stripsRefused };
}

/** Photo pixels of the person's photo per pixel of the truth's picture. */
const enlargement = ({ widthPx }: MacroTruth): number => PHOTO_WIDTH_PX / widthPx;

function scaleSetter(
  truth: MacroTruth,
  photo: RenderedMacro | null,
  statedFactor: number,
): ((pick: Hand) => Scale) | null {
  const object = truth.scaleObject!;
  const by = enlargement(truth);
  const key = (i: number): Point => ({
    x: by * object.keyPoints[i]!.px[0],
    y: by * object.keyPoints[i]!.px[1],
  });
  // The face lies anywhere within the stated half-width of the scale's plane.
  const surface = { aboveMm: 0, plusMinusMm: LEVEL_MM };
  if (object.kind === "rule") {
    const lengthMm = object.sizes["graduatedLengthMm"]! * statedFactor;
    return (pick) => ({
      kind: "two-points",
      a: pick(key(0)),
      b: pick(key(object.keyPoints.length - 1)),
      lengthMm,
      surface,
    });
  }
  if (object.kind === "card") {
    const onEdge = (from: Point, to: Point, share: number): Point => ({
      x: from.x + share * (to.x - from.x),
      y: from.y + share * (to.y - from.y),
    });
    // Corners are listed from the lower left, against the clock as seen; from the top left, with it, they are these.
    const corners = [key(3), key(2), key(1), key(0)];
    return (pick) => ({
      kind: "edges",
      edges: corners.map((corner, i): [PhotoPoint, PhotoPoint] => {
        const next = corners[(i + 1) % 4]!;
        return [pick(onEdge(corner, next, 0.12)), pick(onEdge(corner, next, 0.88))];
      }),
      widthMm: object.sizes["lengthMm"]! * statedFactor,
      heightMm: object.sizes["widthMm"]! * statedFactor,
      surface,
    });
  }
  const found = photo === null ? null : findStrip(rgbaOf(photo));
  if (found === null || !found.ok) return null;
  const { corners, cornerSigmaPx } = found.value;
  return () => ({
    kind: "strip",
    corners: corners.map((corner) => ({ ...corner, x: by * corner.x, y: by * corner.y })),
    cornerSigmaPx: by * cornerSigmaPx,
    printFactor: statedFactor,
    surface,
  });
}

/** Picked after zooming in, until a pixel of the screen covers one or two of the photo's. */
const GRAINS = [1, 2];

function readOnce(truth: MacroTruth, setter: (pick: Hand) => Scale, factor: number, random: () => number) {
  const options: MeasureOptions = {
    ...defaultMeasureOptions,
    photo: { widthPx: PHOTO_WIDTH_PX, heightPx: truth.heightPx * enlargement(truth) },
  };
  const pick: Hand = (at) => {
    const grainPx = GRAINS[Math.floor(random() * GRAINS.length)]!;
    const sigma = options.pickSigmaPx * grainPx * factor;
    return { x: at.x + sigma * normal(random), y: at.y + sigma * normal(random), grainPx };
  };
  return measureSection(drawSection(truth, pick, random), calibrate(setter(pick), options));
}

/** What a careful person draws of this section. */
export function drawSection(
  truth: MacroTruth,
  pick: Hand,
  random: () => number,
  usualMm = 1.5,
): SectionDrawing {
  const by = enlargement(truth);
  const shoot = ([x, y]: readonly [number, number]): Point => {
    const [u, v] = projectPoint(truth.camera, [x, y, 0]);
    return { x: by * u, y: by * v };
  };
  const at = ([x, y]: readonly [number, number]): Point => ({ x: by * x, y: by * y });
  return {
    schemaVersion: 1,
    joint: truth.joint,
    outline: pickPlaces(truth.outlineMm, random, usualMm).map((place) => pick(shoot(place))),
    edges: truth.edges.map(({ role, px }) => ({
      role: role as SectionDrawing["edges"][number]["role"],
      points: px.map((one) => pick(at(one))),
    })),
    root: pick(at(truth.rootPx)),
    toes: [null, null],
  };
}

/** Of these nought is certain where the truth is nought: a reading kept from going below it cannot miss. */
const certainAtNought: ReadonlySet<SectionFigureId> = new Set<SectionFigureId>([
  "convexity",
  "concavity",
  "underfill",
  "unreached",
  "root-concavity",
  "leg-difference",
]);

function casesOf(
  truth: MacroTruth,
  photo: number,
  scenario: MacroName,
  scale: SectionScale,
  stated: ReturnType<typeof measureSection>,
  doubled: ReturnType<typeof measureSection>,
  unread: string[],
): readonly SectionCase[] {
  return sectionFigureIds.flatMap((figure): SectionCase[] => {
    const size = truth.sizes[figure];
    if (size === undefined || (size === 0 && certainAtNought.has(figure))) return [];
    const [one, other] = [stated.figures[figure], doubled.figures[figure]];
    if (one === null || other === null) {
      // A hand twice as bad may cross its own outline, and then rightly reads nothing.
      if (one === null) unread.push(`${scenario} ${figure}`);
      return [];
    }
    const reading = (quantity: typeof one): Reading => {
      const error = quantity.value - size;
      return { error, inside: Math.abs(error) <= quantity.expandedUncertainty };
    };
    return [
      {
        photo,
        scenario,
        scale,
        figure,
        truth: size,
        unit: one.unit,
        stated: reading(one),
        doubled: reading(other),
      },
    ];
  });
}
