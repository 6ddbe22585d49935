import { bandPhases, bandRows, closePhase, runBand, type BandJob } from "./bands";
import { buildScene, type BuiltScene } from "./build-scene";
import { createBloomMap } from "./camera/bloom";
import { createCamera, type Camera } from "./camera/camera";
import type { Development } from "./camera/development";
import { createVisibleBlocks } from "./camera/visible-blocks";
import { createCeilingMap } from "./field/ceiling-map";
import { radians } from "./geometry/vector";
import { createLightRig } from "./light/lamp";
import { createOpennessMap } from "./light/openness";
import { namedSeed } from "./noise/random";
import { RenderParamsSchema, type RenderParams, type RenderParamsInput } from "./params";
import { runOnThreads } from "./run-on-threads";
import { scenarios } from "./scenarios";
import type { SceneSpec } from "./scene";
import { sceneTruth, type Truth } from "./truth";

export interface RenderedScene {
  /** Interleaved 8-bit sRGB, upright. */
  readonly rgb: Uint8Array;
  readonly width: number;
  readonly height: number;
  readonly truth: Truth;
}

/** The scenario with everything the caller asked for put in its place. */
export function resolveSpec(params: RenderParams): SceneSpec {
  const spec = scenarios[params.scenario](namedSeed(params.seed, params.scenario));
  const pose = {
    ...spec.pose,
    tiltDeg: params.tiltDeg ?? spec.pose.tiltDeg,
    azimuthDeg: params.azimuthDeg ?? spec.pose.azimuthDeg,
    rollDeg: params.rollDeg ?? spec.pose.rollDeg,
    distanceMm: params.distanceMm ?? spec.pose.distanceMm,
    fieldWidthMm: params.fieldWidthMm ?? spec.pose.fieldWidthMm,
  };
  const wanted = params.scaleObject ?? spec.scaleObject?.kind ?? "none";
  const placed = spec.scaleObject;
  const scaleObject =
    wanted === "none" || placed === null
      ? null
      : {
          ...placed,
          kind: wanted,
          sizeMm:
            params.scaleObjectMm ?? (wanted === placed.kind ? placed.sizeMm : wanted === "disc" ? 25 : 100),
        };
  return {
    ...spec,
    pose,
    scaleObject,
    bench: params.bench ?? spec.bench,
    lighting: params.lighting ?? spec.lighting,
    exposureEv: params.exposureEv ?? spec.exposureEv,
  };
}

export function createSceneCamera(spec: SceneSpec, params: RenderParams): Camera {
  const widthPx = 2 * Math.round(Math.sqrt(params.megapixels * 1e6 * spec.pose.aspect) / 2);
  const heightPx = 2 * Math.round(widthPx / spec.pose.aspect / 2);
  const [x, y] = spec.pose.target;
  return createCamera({
    ...spec.pose,
    widthPx,
    heightPx,
    target: [x, y, 0],
    k1: params.distortion,
    k2: -params.distortion * 0.3,
  });
}

interface Prepared {
  readonly params: RenderParams;
  readonly scene: BuiltScene;
  readonly job: BandJob;
}

function sharedFloats(length: number): Float32Array {
  return new Float32Array(new SharedArrayBuffer(4 * length));
}

/** A scene that is built and looked at, but not lit. */
interface Staged {
  readonly params: RenderParams;
  readonly spec: SceneSpec;
  readonly camera: Camera;
  readonly scene: BuiltScene;
}

/** What makes another scene of a scenario's, such as the same without one imperfection. */
export type AlterScene = (spec: SceneSpec) => SceneSpec;
const asItIs: AlterScene = (spec) => spec;

function stage(input: RenderParamsInput, alter = asItIs): Staged {
  const params = RenderParamsSchema.parse(input);
  const spec = alter(resolveSpec(params));
  const camera = createSceneCamera(spec, params);
  const finer = params.quality === "exact-draft" ? 1.25 : 0.95;
  const scene = buildScene(spec, (spec.pose.fieldWidthMm / camera.widthPx) * finer);
  return { params, spec, camera, scene };
}

const truthOf = ({ params, camera, scene }: Pick<Staged, "params" | "camera" | "scene">): Truth =>
  sceneTruth(scene, camera, { scenario: params.scenario, seed: params.seed });

/** Soot and fume only darken what is there: the truth knows nothing of them, and they take long. */
const unsooted: AlterScene = (spec) => ({
  ...spec,
  faults: spec.faults.filter(({ kind }) => kind !== "soot"),
});

/** The truth of the picture these params make, without the picture: for those who do not look at its pixels. */
export const renderTruth = (input: RenderParamsInput): Truth => truthOf(stage(input, unsooted));

/** Builds the surface and everything that is needed to light and trace it. */
function prepare(input: RenderParamsInput, alter = asItIs): Prepared {
  const { params, spec, camera, scene } = stage(input, alter);
  const draft = params.quality === "exact-draft";
  const { grid } = scene;
  const pixels = camera.widthPx * camera.heightPx;
  const job: BandJob = {
    grid,
    profile: spec.profile,
    look: { plate: spec.plate, weld: spec.weld },
    rig: createLightRig(
      spec.lighting,
      radians(spec.lightTurnDeg),
      spec.profile.up,
      namedSeed(params.seed, `light on ${params.scenario}`),
    ),
    openness: createOpennessMap(grid, spec.profile),
    ceiling: createCeilingMap(grid),
    visible: createVisibleBlocks(grid, camera),
    camera,
    bench: spec.bench,
    benchSeed: namedSeed(params.seed, "bench"),
    thicknessMm: spec.thicknessMm,
    samples: draft ? 1 : 2,
    radiance: sharedFloats(3 * grid.nx * grid.ny),
    exposure: { rgb: sharedFloats(3 * pixels), depth: sharedFloats(pixels) },
    development: development(spec, camera, params),
    bloom: createBloomMap(camera.widthPx, camera.heightPx),
    gain: new Float64Array(new SharedArrayBuffer(8)),
    rgb: new Uint8Array(new SharedArrayBuffer(3 * pixels)),
  };
  return { params, scene, job };
}

function finish({ params, scene, job }: Prepared): RenderedScene {
  const { camera } = job;
  // Libraries that take pixels refuse shared memory.
  const rgb = new Uint8Array(job.rgb);
  return { rgb, width: camera.widthPx, height: camera.heightPx, truth: truthOf({ params, camera, scene }) };
}

/**
 * The picture and its truth, made in this thread; the same params give the same bytes.
 * Throws a ZodError on params that cannot be used; `parseArguments` turns those into sentences. `alter` changes the
 * scene before it is built, for a picture to compare with.
 */
export function renderScene(input: RenderParamsInput, alter = asItIs): RenderedScene {
  const prepared = prepare(input, alter);
  for (const phase of bandPhases) {
    runBand(prepared.job, phase, 0, bandRows(prepared.job, phase));
    closePhase(prepared.job, phase);
  }
  return finish(prepared);
}

/** As `renderScene`, byte for byte, with the rows shared out over `threads` worker threads. */
export async function renderSceneOnThreads(
  input: RenderParamsInput,
  threads: number,
): Promise<RenderedScene> {
  const prepared = prepare(input);
  await runOnThreads(prepared.job, threads);
  return finish(prepared);
}

function development(spec: SceneSpec, camera: Camera, params: RenderParams): Development {
  const draft = params.quality === "exact-draft";
  const scale = camera.widthPx / 1900;
  return {
    widthPx: camera.widthPx,
    heightPx: camera.heightPx,
    exposureEv: spec.exposureEv,
    warmth: params.warmth,
    vignette: draft ? 0 : 0.16,
    noise: draft ? 0 : params.noise,
    motionPx: params.motionPx,
    defocusPxMm: draft ? 0 : params.defocus * 4200 * scale,
    focusMm: spec.pose.distanceMm - 2,
    lensBlurPx: draft ? 0 : 0.55,
    bloom: draft ? 0 : 0.28,
    sharpen: draft ? 0 : 0.35,
    seed: namedSeed(params.seed, "sensor"),
  };
}
