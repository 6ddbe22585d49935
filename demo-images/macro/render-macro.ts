import { createBloomMap, gatherBloom, spreadBloom } from "../camera/bloom";
import type { Camera } from "../camera/camera";
import { developRows } from "../camera/develop";
import type { Development } from "../camera/development";
import { blurAcross } from "../camera/lens";
import { meterGain } from "../camera/meter";
import { createUndistorter } from "../camera/undistort";
import { createBench } from "../materials/bench";
import { noise2, smoothstep } from "../noise/noise";
import { namedSeed } from "../noise/random";
import { etchedFace } from "./etched-steel";
import { COUPON_MM, macroScene, macroTruth, type MacroScene, type MacroTruth } from "./macro-scene";
import type { MacroParamsInput } from "./macro-params";

export interface RenderedMacro {
  /** Interleaved 8-bit sRGB, upright. */
  readonly rgb: Uint8Array;
  readonly width: number;
  readonly height: number;
  readonly truth: MacroTruth;
}

/** The sections that ship with the demo set. */
export const demoSections = [
  { scenario: "section-tee-undercut", seed: 7, megapixels: 1.2 },
  { scenario: "section-butt", seed: 7, megapixels: 1.2 },
] as const satisfies readonly MacroParamsInput[];

/** The truth of a section's picture without the picture. */
export const macroTruthOf = (input: MacroParamsInput): MacroTruth => macroTruth(macroScene(input));

/** A photograph of a cut, polished and etched coupon; the same params give the same bytes. */
export function renderMacro(input: MacroParamsInput): RenderedMacro {
  const scene = macroScene(input);
  const { camera } = scene;
  const pixels = camera.widthPx * camera.heightPx;
  const exposure = { rgb: new Float32Array(3 * pixels), depth: new Float32Array(pixels) };
  expose(scene, exposure.rgb, exposure.depth);
  const development = developmentOf(scene);
  const gain = meterGain(exposure.rgb, camera.widthPx, camera.heightPx, development.exposureEv);
  const bloom = createBloomMap(camera.widthPx, camera.heightPx);
  gatherBloom(bloom, exposure, development, 1.4 / gain, 0, bloom.ny);
  spreadBloom(bloom);
  blurAcross(exposure, development, 0, camera.heightPx);
  const rgb = new Uint8Array(3 * pixels);
  developRows(exposure, bloom, development, gain, rgb, 0, camera.heightPx);
  return { rgb, width: camera.widthPx, height: camera.heightPx, truth: macroTruth(scene) };
}

function developmentOf({ params, camera }: MacroScene): Development {
  return {
    widthPx: camera.widthPx,
    heightPx: camera.heightPx,
    exposureEv: params.exposureEv + 0.12,
    warmth: params.warmth,
    vignette: 0.12,
    noise: params.noise,
    motionPx: 0,
    defocusPxMm: (params.defocus * 4200 * camera.widthPx) / 1900,
    focusMm: params.distanceMm,
    lensBlurPx: 0.6,
    bloom: 0.18,
    sharpen: 0.35,
    seed: namedSeed(params.seed, "sensor"),
  };
}

/** Where a ray meets the plane at a height, for the ray through a place of the picture. */
type Meet = (heightMm: number) => readonly [x: number, y: number, depth: number];

function rays(camera: Camera): (px: number, py: number) => Meet {
  const undistort = createUndistorter(camera);
  const at = new Float64Array(2);
  const { position: p, right: r, down: d, forward: f } = camera;
  return (px, py) => {
    undistort(px, py, at);
    const [a, b] = [at[0]!, at[1]!];
    const [dx, dy, dz] = [a * r[0] + b * d[0] + f[0], a * r[1] + b * d[1] + f[1], a * r[2] + b * d[2] + f[2]];
    return (height) => {
      const t = (height - p[2]) / dz;
      return [p[0] + t * dx, p[1] + t * dy, t];
    };
  };
}

/** Two samples to a pixel, and two more where those part: at the edges of the coupon, the marks of the rule. */
const FIRST = [
  [0.25, 0.25],
  [0.75, 0.75],
] as const;
const MORE = [
  [0.75, 0.25],
  [0.25, 0.75],
] as const;
const PARTED = 0.04;

function expose(scene: MacroScene, rgb: Float32Array, depth: Float32Array): void {
  const { camera } = scene;
  const ray = rays(camera);
  const shade = shaderOf(scene);
  const out = new Float64Array(3);
  for (let row = 0; row < camera.heightPx; row++)
    for (let column = 0; column < camera.widthPx; column++) {
      const k = row * camera.widthPx + column;
      let taken = 0;
      const take = ([u, v]: readonly [number, number]): number => {
        depth[k]! += shade(ray(column + u, row + v), out);
        for (let c = 0; c < 3; c++) rgb[3 * k + c]! += out[c]!;
        taken++;
        return out[1]!;
      };
      if (Math.abs(take(FIRST[0]) - take(FIRST[1])) > PARTED) MORE.forEach(take);
      depth[k]! /= taken;
      for (let c = 0; c < 3; c++) rgb[3 * k + c]! /= taken;
    }
}

type Shader = (meet: Meet, out: Float64Array) => number;

/** The mat under the coupon, with the coupon's shadow on it. */
function benchShader({ params }: MacroScene, face: ReturnType<typeof etchedFace>): Shader {
  const bench = createBench("rubber-mat", namedSeed(params.seed, "bench"));
  const mat = new Float32Array(3);
  return (meet, out) => {
    const [x, y, t] = meet(-COUPON_MM);
    bench(x, y, mat);
    const under = face.offCoupon(x - 0.35 * COUPON_MM, y + 0.45 * COUPON_MM);
    const contact = 1 - 0.7 * Math.exp(-Math.max(0, face.offCoupon(x, y)) / 2.5);
    const light = (0.35 + 0.65 * smoothstep(-1.5, 3, under)) * contact;
    for (let c = 0; c < 3; c++) out[c] = 1.3 * mat[c]! * light;
    return t;
  };
}

/** Light from one lamp to the upper left and a bright room; what the ray meets first, and how far away. */
function shaderOf(scene: MacroScene): Shader {
  const { spec, params } = scene;
  const seed = namedSeed(params.seed, `etch ${params.scenario}`);
  const face = etchedFace(spec, seed);
  const onBench = benchShader(scene, face);
  const object = objectShader(scene);
  // A polished face mirrors the room: bright towards the lamp, falling off over the coupon.
  const sheen = (x: number, y: number): number =>
    1 + 0.16 * Math.tanh((y - x) / 26) + 0.05 * noise2(x * 0.03, y * 0.03, seed + 60);
  return (meet, out) => {
    const [x, y, t] = meet(0);
    const found = object(meet, out);
    if (found !== null) return found;
    if (face.offCoupon(x, y) <= 0) {
      face.colour(x, y, out);
      const light = sheen(x, y);
      for (let c = 0; c < 3; c++) out[c]! *= light;
      return t;
    }
    // So far off the coupon no ray as steep as these meets its side.
    const near = face.offCoupon(x, y) < COUPON_MM;
    for (let h = 0.5; near && h < COUPON_MM; h += 1) {
      const [sx, sy, st] = meet(-h);
      if (face.offCoupon(sx, sy) <= 0) {
        const saw = 0.05 * (1 + 0.3 * noise2(sx * 0.8 + sy * 0.8, h * 3, seed + 61));
        out.fill(saw * (1 - (0.6 * h) / COUPON_MM));
        return st;
      }
    }
    return onBench(meet, out);
  };
}

const objectTones = {
  rule: { base: [0.46, 0.45, 0.43], ink: [0.02, 0.02, 0.021] },
  card: { base: [0.3, 0.31, 0.3], ink: [0.06, 0.1, 0.19] },
  strip: { base: [0.72, 0.71, 0.68], ink: [0.022, 0.022, 0.024] },
} as const;

/** The scale object's share of the light, or null where the ray passes it. */
function objectShader({
  object,
  camera,
  params,
}: MacroScene): (meet: Meet, out: Float64Array) => number | null {
  if (object === null) return () => null;
  const { thing, placement, aboveMm } = object;
  const step = (0.6 * params.fieldWidthMm) / camera.widthPx;
  const t = (placement.turnDeg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(t), Math.sin(t)];
  const tones = objectTones[thing.kind as keyof typeof objectTones];
  return (meet, out) => {
    const [x, y, depth] = meet(aboveMm);
    const [dx, dy] = [x - placement.xMm, y - placement.vMm];
    const [a, b] = [dx * cos + dy * sin, dy * cos - dx * sin];
    if (thing.cover(a, b, step) < 0.5) return null;
    const ink = thing.ink(a, b, step);
    const brushed =
      thing.kind === "rule" ? 1 + 0.09 * noise2(a * 0.03, b * 3, 80) + 0.04 * noise2(a * 0.1, b * 11, 81) : 1;
    const light = (1 + 0.12 * Math.tanh((y - x) / 30)) * brushed;
    for (let c = 0; c < 3; c++) out[c] = light * (tones.base[c]! + ink * (tones.ink[c]! - tones.base[c]!));
    return depth;
  };
}
