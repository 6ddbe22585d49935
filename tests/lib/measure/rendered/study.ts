import {
  renderSceneOnThreads,
  renderScene,
  renderTruth,
  type RenderedScene,
  type RenderParamsInput,
} from "@/demo-images";
import { calibrate, defaultMeasureOptions, type MeasureOptions } from "@/lib/measure";
import { chance, normal } from "../camera";
import { drawFigure, figureKinds, type FigureKind, type Hand, type TrueFigure } from "./figures";
import { drawPhoto, type ScaleObjectKind } from "./pose";
import { sceneFrame } from "./scene-frame";
import { setters, type ScaleKind, type ScaleSetter } from "./scales";

/** One figure measured once: by a hand of the stated steadiness and by one half as steady. */
export interface StudyCase {
  readonly photo: number;
  readonly scale: ScaleKind;
  readonly figure: FigureKind;
  readonly tiltDeg: number;
  readonly truth: number;
  readonly stated: Reading;
  readonly doubled: Reading;
}

export interface Reading {
  readonly error: number;
  readonly inside: boolean;
}

export interface StudyResult {
  readonly cases: readonly StudyCase[];
  readonly photos: number;
  /** Photos in which the object did not lie whole in the picture: no scale to set. */
  readonly notWhole: number;
  /** Strips that were whole in view and yet refused. */
  readonly stripsRefused: number;
}

export interface StudySize {
  readonly photosPerObject: Readonly<Record<ScaleObjectKind, number>>;
  readonly figuresPerKind: number;
  readonly megapixels: Readonly<Record<ScaleObjectKind, number>>;
  /** Every so many photos is rendered with lens, sensor noise and sharpening; the others as exact drafts. */
  readonly photoQualityEvery: number;
  readonly seed: number;
}

/**
 * Rendered photographs with known truth. Of each photo every figure is measured afresh: its own picks, and its own picks of
 * the scale; tilt, lens, and what the scale object's stated length is out by belong to the photo and are shared.
 */
export async function renderedStudy(size: StudySize, threads = 1): Promise<StudyResult> {
  const random = chance(size.seed);
  const cases: StudyCase[] = [];
  let [photos, notWhole, stripsRefused] = [0, 0, 0];
  for (const kind of Object.keys(size.photosPerObject) as ScaleObjectKind[])
    for (let i = 0; i < size.photosPerObject[kind]; i++) {
      const quality = i % size.photoQualityEvery === 0 ? "photo" : "exact-draft";
      const params = drawPhoto(kind, i, random, size.megapixels[kind], quality);
      const photo = kind === "strip" ? await draw(params, threads) : unseen(params);
      const frame = sceneFrame(photo);
      const factor = 1 + defaultMeasureOptions.statedLengthRelativeU * normal(random);
      for (const setter of setters(photo, frame, factor)) {
        if (setter === null) stripsRefused++;
        else if (!frame.inView(setter.places)) notWhole++;
        else cases.push(...measureAll(photo, photos, setter, size.figuresPerKind, random));
      }
      photos++;
    }
  return { cases, photos, notWhole, stripsRefused };
}

const draw = async (params: RenderParamsInput, threads: number): Promise<RenderedScene> =>
  threads > 1 ? await renderSceneOnThreads(params, threads) : renderScene(params);

/**
 * A photo of which no pixel is read: beside a rule, a card or a disc hands pick true places as unsteadily as hands do. Its
 * truth is that of the picture, and the picture itself need not be lit.
 */
function unseen(params: RenderParamsInput): RenderedScene {
  const truth = renderTruth(params);
  return { rgb: new Uint8Array(0), width: truth.widthPx, height: truth.heightPx, truth };
}

function measureAll(
  photo: RenderedScene,
  index: number,
  setter: ScaleSetter,
  count: number,
  random: () => number,
): readonly StudyCase[] {
  const frame = sceneFrame(photo);
  const options: MeasureOptions = {
    ...defaultMeasureOptions,
    photo: frame.size,
  };
  return figureKinds.flatMap((kind) =>
    Array.from({ length: count }, () => drawFigure(kind, photo, frame, random))
      .filter((figure): figure is TrueFigure => figure !== null && frame.inView(figure.places))
      .map((figure): StudyCase => {
        const read = (factor: 1 | 2): Reading => reading(figure, setter, options, factor, random);
        return {
          photo: index,
          scale: setter.kind,
          figure: kind,
          tiltDeg: frame.tiltDeg,
          truth: figure.truth,
          stated: read(1),
          doubled: read(2),
        };
      }),
  );
}

/** Picked after zooming in, until a pixel of the screen covers one or two of the photo's. */
const GRAINS = [1, 2];

function reading(
  figure: TrueFigure,
  setter: ScaleSetter,
  options: MeasureOptions,
  factor: 1 | 2,
  random: () => number,
): Reading {
  const pick: Hand = (at, grainPx = GRAINS[Math.floor(random() * GRAINS.length)]!) => {
    const sigma = options.pickSigmaPx * grainPx * factor;
    return { x: at.x + sigma * normal(random), y: at.y + sigma * normal(random), grainPx };
  };
  const calibration = calibrate(setter.set(pick), options);
  if (!calibration.ok) throw new Error(`${setter.kind}: ${calibration.issues[0]!.code}`);
  const quantity = figure.measure(calibration.value, pick);
  const error = quantity.value - figure.truth;
  return { error, inside: Math.abs(error) <= quantity.expandedUncertainty };
}
