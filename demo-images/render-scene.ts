import { buildScene, type BuiltScene } from "./build-scene";
import { createCamera, type Camera } from "./camera/camera";
import { develop, type Development } from "./camera/develop";
import { exposeRows, type Exposure } from "./camera/expose";
import { createCeilingMap } from "./field/ray-hit";
import { radians } from "./geometry/vector";
import { createLightRig } from "./light/lamp";
import { lightRows } from "./light/light-field";
import { createOpennessMap } from "./light/openness";
import { createBench } from "./materials/bench";
import { namedSeed } from "./noise/random";
import { RenderParamsSchema, type RenderParams, type RenderParamsInput } from "./params";
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

function createSceneCamera(spec: SceneSpec, params: RenderParams): Camera {
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

/** One pass of the whole pipeline, in this thread. Pure: the same params give the same bytes. */
export function renderScene(input: RenderParamsInput): RenderedScene {
  const params = RenderParamsSchema.parse(input);
  const spec = resolveSpec(params);
  const camera = createSceneCamera(spec, params);
  const draft = params.quality === "exact-draft";
  const stepMm = (spec.pose.fieldWidthMm / camera.widthPx) * (draft ? 1.25 : 0.95);
  const scene = buildScene(spec, stepMm);
  const exposure = exposeScene(scene, camera, params);
  const rgb = develop(exposure, development(spec, camera, params));
  const truth = sceneTruth(scene, camera, { scenario: params.scenario, seed: params.seed });
  return { rgb, width: camera.widthPx, height: camera.heightPx, truth };
}

function exposeScene(scene: BuiltScene, camera: Camera, params: RenderParams): Exposure {
  const { spec, grid } = scene;
  const rig = createLightRig(spec.lighting, radians(spec.lightTurnDeg), spec.profile.up);
  const radiance = new Float32Array(3 * grid.nx * grid.ny);
  const look = { plate: spec.plate, weld: spec.weld };
  const openness = createOpennessMap(grid, spec.profile);
  lightRows({ grid, profile: spec.profile, look, rig, openness, eye: camera.position }, radiance, 0, grid.ny);
  const pixels = camera.widthPx * camera.heightPx;
  const exposure = { rgb: new Float32Array(3 * pixels), depth: new Float32Array(pixels) };
  const bench = createBench(spec.bench, namedSeed(params.seed, "bench"));
  const samples = params.quality === "exact-draft" ? 1 : 2;
  const ceiling = createCeilingMap(grid);
  exposeRows(
    {
      camera,
      grid,
      ceiling,
      radiance,
      rig,
      up: spec.profile.up,
      bench,
      thicknessMm: spec.thicknessMm,
      samples,
    },
    exposure,
    0,
    camera.heightPx,
  );
  return exposure;
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
