import { renderScene, type Pixel } from "@/demo-images";
import { createRandom, mixSeed } from "@/demo-images/noise/random";
import { keptBackScenarios, streetParams, streetScene } from "@/demo-images/street/street-scene";
import type { Point } from "@/lib/geometry";
import { proposeLine, traceBead, type Pixels, type ReadStrip, type ReadWhole } from "@/lib/trace";
import { pixelsOf, tracePicture, type TracePicture } from "./pictures";
import { offAndSolid, studyAsked, type Asked } from "./study-picture";

/** What is wrong with a picture; "none" is the same picture as it was. */
export const spoiltKinds = ["none", "tiny", "blurred", "blown", "no-bead", "two-beads"] as const;
export type SpoiltKind = (typeof spoiltKinds)[number];

export interface SpoiltAnswer {
  readonly kind: SpoiltKind;
  readonly n: number;
  readonly scenario: string;
  /** How many beads are in view; missing in what older studies wrote. */
  readonly beads?: number;
  /** What the reader said of a line a person would draw there: "read", or the code of its refusal. */
  readonly traced: string;
  /** What was said of the whole picture: "proposed", or the code. */
  readonly proposed: string;
  /** Where it was read after all: share of toe points off by a quarter of the width and drawn solid; null: unknown. */
  readonly wrongAndSolid: number | null;
}

const SEED = 9301;

/** Spoils the n-th picture in this way and asks the reader and the finder; null: such a picture cannot be made of it. */
export async function spoiltAnswer(
  kind: SpoiltKind,
  n: number,
  readWhole: ReadWhole,
  read: ReadStrip,
): Promise<SpoiltAnswer | null> {
  const made = spoiltPicture(kind, n);
  if (made === null) return null;
  const traced = await traceBead(made.image, made.line, read);
  const proposed = await proposeLine(made.image, readWhole, read);
  const studied = made.truth && traced.ok ? await studyAsked("kept-street", n, read, null, made.truth) : null;
  return {
    wrongAndSolid: studied && studied.stations.length > 0 ? mean(studied.stations.map(offAndSolid)) : null,
    kind,
    n,
    scenario: made.scenario,
    beads: made.beads,
    traced: traced.ok ? "read" : traced.issues[0]!.code,
    proposed: proposed.ok ? "proposed" : proposed.issues[0]!.code,
  };
}

interface Spoilt {
  readonly scenario: string;
  readonly beads: number;
  readonly image: Pixels;
  readonly line: readonly Point<"photo">[];
  /** Where what the picture shows is where it was before. */
  readonly truth?: Asked;
}

const mean = (values: readonly number[]): number => values.reduce((sum, one) => sum + one, 0) / values.length;

function spoiltPicture(kind: SpoiltKind, n: number): Spoilt | null {
  if (kind === "no-bead") return besideTheBead(n);
  if (kind === "two-beads") return betweenTwoBeads(n);
  const picture = tracePicture("refusal", n);
  if (picture.picked === null) return null;
  const random = createRandom(mixSeed(SEED, n));
  const widthPx = medianWidth(picture);
  const { image, picked: line, scenario, beads } = picture;
  if (kind === "none") return widthPx < 50 ? null : { scenario, beads, image, line };
  if (kind === "tiny") {
    const factor = random.between(16, 40) / widthPx;
    if (factor > 0.9) return null;
    const at = line.map(({ x, y }) => ({ x: x * factor, y: y * factor }));
    return { scenario, beads, image: shrunk(image, factor), line: at };
  }
  if (kind === "blurred")
    return { scenario, beads, image: blurred(image, Math.round(random.between(0.3, 0.6) * widthPx)), line };
  const light = blown(picture);
  return { scenario, beads, image: light, line, truth: { ...picture, image: light } };
}

const medianWidth = ({ left, right }: TracePicture): number =>
  left.map(([x, y], i) => Math.hypot(x - right[i]![0], y - right[i]![1])).sort((a, b) => a - b)[
    left.length >> 1
  ]!;

/** The mean over what each new pixel covers. */
function shrunk({ width, height, data }: Pixels, factor: number): Pixels {
  const [w, h] = [Math.floor(width * factor), Math.floor(height * factor)];
  const out = new Uint8ClampedArray(4 * w * h).fill(255);
  for (let j = 0; j < h; j++)
    for (let i = 0; i < w; i++)
      for (let c = 0; c < 3; c++) {
        let [sum, count] = [0, 0];
        for (let y = Math.floor(j / factor); y < (j + 1) / factor && y < height; y++)
          for (let x = Math.floor(i / factor); x < (i + 1) / factor && x < width; x++, count++)
            sum += data[4 * (y * width + x) + c]!;
        out[4 * (j * w + i) + c] = sum / Math.max(1, count);
      }
  return { width: w, height: h, data: out };
}

/** Three box means of `reach` pixels either way along each direction in all, by running sums. */
function blurred({ width, height, data }: Pixels, reach: number): Pixels {
  let from = Float32Array.from(data);
  const box = Math.max(1, Math.round(reach / 3));
  for (let turn = 0; turn < 3; turn++) {
    from = runningMean(from, height, width, 4 * width, 4, box);
    from = runningMean(from, width, height, 4, 4 * width, box);
  }
  return { width, height, data: Uint8ClampedArray.from(from) };
}

function runningMean(
  from: Float32Array,
  lines: number,
  length: number,
  lineStep: number,
  step: number,
  box: number,
): Float32Array<ArrayBuffer> {
  const out = new Float32Array(from.length);
  for (let line = 0; line < lines; line++)
    for (let c = 0; c < 4; c++) {
      const base = line * lineStep + c;
      const value = (i: number): number => from[base + Math.min(length - 1, Math.max(0, i)) * step]!;
      let sum = 0;
      for (let i = -box; i <= box; i++) sum += value(i);
      for (let i = 0; i < length; i++) {
        out[base + i * step] = sum / (2 * box + 1);
        sum += value(i + box + 1) - value(i - box);
      }
    }
  return out;
}

/** As much more light as whitens six tenths of what lies between the toes. */
function blown(picture: TracePicture): Pixels {
  const { left, right, image } = picture;
  const lights = left.flatMap(([x, y], i) =>
    [0.15, 0.3, 0.5, 0.7, 0.85].flatMap((share) => {
      const [u, v] = [x + (right[i]![0] - x) * share, y + (right[i]![1] - y) * share].map(Math.floor);
      if (u! < 0 || v! < 0 || u! >= image.width || v! >= image.height) return [];
      const k = 4 * (v! * image.width + u!);
      return [0.299 * image.data[k]! + 0.587 * image.data[k + 1]! + 0.114 * image.data[k + 2]!];
    }),
  );
  const level = lights.sort((a, b) => a - b)[Math.floor(0.4 * lights.length)]!;
  const data = Uint8ClampedArray.from(image.data, (v, k) =>
    k % 4 === 3 ? v : (v * 255) / Math.max(1, level),
  );
  return { ...image, data };
}

/** The plate beside the bead: the camera is turned away until none of it is in the picture. */
function besideTheBead(n: number): Spoilt | null {
  const scenario = keptBackScenarios[n % keptBackScenarios.length]!;
  const seed = mixSeed(SEED + 1, n) % 2147483647;
  const { rgb, width, height, truth } = renderScene(streetParams(scenario, seed, 1.2), (spec) => {
    const scene = streetScene(spec, mixSeed(seed, 24), 0);
    const last = scene.beads[scene.beads.length - 1]!;
    const away = 0.65 * 48 + (last.rightMm - last.leftMm) / 2 + 3;
    const middle = (last.leftMm + last.rightMm) / 2;
    const target = [scene.pose.target[0], middle + (n % 2 === 0 ? away : -away)] as const;
    return { ...scene, pose: { ...scene.pose, target, fieldWidthMm: 48, distanceMm: 110, tiltDeg: 8 } };
  });
  const inside = ([x, y]: Pixel): boolean => x > 0 && y > 0 && x < width && y < height;
  if ([...truth.weld.leftToePx, ...truth.weld.rightToePx].some(inside)) return null;
  const random = createRandom(mixSeed(SEED + 2, n));
  const line = [0.15, 0.85].map((share) => ({ x: share * width, y: random.between(0.3, 0.7) * height }));
  return { scenario, beads: 0, image: pixelsOf(rgb, width, height), line };
}

/** Two beads side by side on a flat plate, and a line midway between them. */
function betweenTwoBeads(n: number): Spoilt | null {
  const flat = keptBackScenarios.filter((name) => !/tee|lap|corner/.test(name));
  const scenario = flat[n % flat.length]!;
  const seed = mixSeed(SEED + 3, n) % 2147483647;
  const { rgb, width, height, truth } = renderScene(streetParams(scenario, seed, 1.2), (spec) =>
    streetScene(spec, mixSeed(seed, 24), 1),
  );
  const other = truth.before?.[0];
  if (truth.before?.length !== 1 || other === undefined || other[0].length < 8) return null;
  const middle = ([left, right]: readonly [readonly Pixel[], readonly Pixel[]]) =>
    left.map(([x, y], i) => ({ x: (x + right[i]![0]) / 2, y: (y + right[i]![1]) / 2 }));
  const visible = (p: { x: number; y: number }): boolean => p.x > 0 && p.y > 0 && p.x < width && p.y < height;
  const [mine, theirs] = [
    middle([truth.weld.leftToePx, truth.weld.rightToePx]).filter(visible),
    middle(other).filter(visible),
  ];
  if (mine.length < 12 || theirs.length < 8) return null;
  const between = (a: { x: number; y: number }, b: { x: number; y: number }) => ({
    x: (a.x + b.x) / 2,
    y: (a.y + b.y) / 2,
  });
  const line = [between(mine[0]!, theirs[0]!), between(mine[mine.length - 1]!, theirs[theirs.length - 1]!)];
  return { scenario, beads: 2, image: pixelsOf(rgb, width, height), line };
}
