import type { BeadShape } from "@/demo-images/geometry/bead";
import { createRandom } from "@/demo-images/noise/random";
import { distance, type Point } from "@/lib/geometry";
import { traceBead, type ReadStrip } from "@/lib/trace";
import { faceStrip, type FaceStrip } from "./face-strip";
import { ripplesOf, type Ripples } from "./ripples";
import type { TraceStation } from "@/lib/trace/types";
import { tracePicture, type TracePicture } from "./pictures";

/**
 * "drawn": the bead as it is. Controls that hold no ripples: "smooth", the same bead drawn without any; "plate", the plate
 * beside it; "shuffled", the face's own light with each row's waves at phases of its own, so that the light's spectrum is the
 * same and no crescent runs through the rows.
 */
export const rippleKinds = ["drawn", "smooth", "plate", "shuffled"] as const;
export type RippleKind = (typeof rippleKinds)[number];

export interface RippleLine {
  readonly ripples: RippleKind;
  readonly set: "ripples-tune" | "ripples-kept";
  readonly n: number;
  readonly scenario: string;
  /** Photo pixels from ripple to ripple, by the drawing. */
  readonly truePx: number;
  /** The spacing read over the drawn one, less one; null: nothing was read. */
  readonly off: number | null;
  /** What was stated of it, with a coverage of about 95 %. */
  readonly stated: number;
}

const smooth = (bead: BeadShape): BeadShape => ({
  ...bead,
  ripple: { ...bead.ripple, heightMm: 0, fineHeightMm: 0 },
});

/** The n-th picture with its controls; every third is drawn without ripples too. Empty where no bead is read in it. */
export async function rippleLines(
  set: RippleLine["set"],
  n: number,
  read: ReadStrip,
): Promise<readonly RippleLine[]> {
  const picture = tracePicture(set, n);
  const traced = await stationsIn(picture, read);
  if (traced === null) return [];
  const face = faceStrip(picture.image, traced);
  if (face === null) return [];
  const line = (kind: RippleKind, asked: FaceStrip): RippleLine =>
    compared(kind, set, n, picture, ripplesOf(asked));
  const lines = [line("drawn", face), line("shuffled", shuffled(face, n))];
  const plate = besideOf(picture, traced);
  if (plate !== null) lines.push(line("plate", plate));
  if (n % 3 !== 0) return lines;
  const even = tracePicture(set, n, 1.2, smooth);
  const stations = await stationsIn(even, read);
  const bare = stations && faceStrip(even.image, stations);
  return bare ? [...lines, line("smooth", bare)] : lines;
}

async function stationsIn(
  { image, picked }: TracePicture,
  read: ReadStrip,
): Promise<readonly TraceStation[] | null> {
  const traced = picked === null ? null : await traceBead(image, picked, read);
  return traced?.ok ? traced.value.stations : null;
}

function compared(
  ripples: RippleKind,
  set: RippleLine["set"],
  n: number,
  { scenario, truth, ripplesMm, left, right }: TracePicture,
  found: Ripples | null,
): RippleLine {
  const common = { ripples, set, n, scenario };
  if (found === null) return { ...common, truePx: NaN, off: null, stated: NaN };
  const middle = left.map(([x, y], i) => ({ x: (x + right[i]![0]) / 2, y: (y + right[i]![1]) / 2 }));
  const alongs = truth.weld.sections.map(({ alongMm }) => alongMm);
  const ends = [found.from, found.to].map((place) => alongOf(place, middle, alongs));
  const [first, last] = [Math.min(...ends), Math.max(...ends)];
  const inside = ripplesMm.filter((at) => at >= first && at <= last);
  const meanMm = (inside[inside.length - 1]! - inside[0]!) / (inside.length - 1);
  const off = (last - first) / meanMm / found.count - 1;
  const truePx = (distance(found.from, found.to) * meanMm) / (last - first);
  return { ...common, truePx, off, stated: 2 * found.share };
}

/** How far along the weld a place lies, mm. */
function alongOf(
  place: Point<"photo">,
  middle: readonly Point<"photo">[],
  alongs: readonly number[],
): number {
  let [best, at] = [Infinity, NaN];
  for (let i = 1; i < middle.length; i++) {
    const [a, b] = [middle[i - 1]!, middle[i]!];
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const t = Math.min(1, Math.max(0, ((place.x - a.x) * dx + (place.y - a.y) * dy) / (dx * dx + dy * dy)));
    const far = Math.hypot(a.x + t * dx - place.x, a.y + t * dy - place.y);
    if (far < best) [best, at] = [far, alongs[i - 1]! + t * (alongs[i]! - alongs[i - 1]!)];
  }
  return at;
}

/** The plate a width and a half beside the bead, where it is in the picture and neither a rule nor another bead lies on it. */
function besideOf(
  { image, truth, beads }: TracePicture,
  stations: readonly TraceStation[],
): FaceStrip | null {
  if (truth.scaleObject !== null || beads > 1) return null;
  const moved = [1.6, -1.6].map((widths) =>
    stations.map((station): TraceStation => {
      const [a, b] = [station.upper.at, station.lower.at];
      const [dx, dy] = [widths * (b.x - a.x), widths * (b.y - a.y)];
      const beside = ({ x, y }: Point<"photo">): Point<"photo"> => ({ x: x + dx, y: y + dy });
      return {
        ...station,
        upper: { ...station.upper, at: beside(a) },
        lower: { ...station.lower, at: beside(b) },
      };
    }),
  );
  const inside = ({ x, y }: Point<"photo">): boolean =>
    x > 2 && y > 2 && x < image.width - 2 && y < image.height - 2;
  const whole = moved.find((list) =>
    list.every(({ end, upper, lower }) => end || (inside(upper.at) && inside(lower.at))),
  );
  return whole ? faceStrip(image, whole) : null;
}

/** Each row by its Fourier sum with phases drawn anew: the spectrum of its light stays, its course along the bead does not. */
export function shuffled(face: FaceStrip, seed: number): FaceStrip {
  const random = createRandom(seed + 1);
  const { rows, columns, light } = face;
  const out = new Float32Array(light.length);
  for (let row = 0; row < rows; row++)
    out.set(
      otherPhases(light.subarray(row * columns, (row + 1) * columns), () => random.next()),
      row * columns,
    );
  return { ...face, light: out };
}

function otherPhases(line: Float32Array, chance: () => number): Float32Array {
  const n = line.length;
  const cosine = Float64Array.from({ length: n }, (_, i) => Math.cos((2 * Math.PI * i) / n));
  const out = new Float64Array(n);
  for (let k = 1; k <= n >> 1; k++) {
    let [re, im] = [0, 0];
    for (let x = 0, at = 0; x < n; x++, at = (at + k) % n) {
      re += line[x]! * cosine[at]!;
      im += line[x]! * cosine[(at + n - (n >> 2)) % n]!;
    }
    const [size, phase] = [(Math.hypot(re, im) * (2 * k === n ? 1 : 2)) / n, chance()];
    const start = Math.floor(phase * n);
    for (let x = 0, at = start; x < n; x++, at = (at + k) % n) out[x]! += size * cosine[at]!;
  }
  const mean = line.reduce((sum, v) => sum + v, 0) / n;
  return Float32Array.from(out, (v) => mean + v);
}
