import type { Pixel } from "@/demo-images";
import { distance, type Point } from "@/lib/geometry";
import { reader, traceBead, type Pixels, type ReadStrip, type ReadWhole } from "@/lib/trace";
import { withoutRolled } from "@/lib/trace/drawn-profile";
import type { TraceStation } from "@/lib/trace/types";
import { isClear, lookAtWhole, type WholeLook } from "@/lib/trace/propose-line";
import { tracePicture, type PictureKind, type TracePicture } from "./pictures";

/** Both toes at one station, in widths of the bead: error (positive is outwards), the answer's spread, how sure. */
export type StudiedStation = readonly [
  upperError: number,
  lowerError: number,
  upperSpread: number,
  lowerSpread: number,
  upperSure: number,
  lowerSure: number,
  /** 1 where metal is rolled over a toe there, as somebody would mark it. */
  rolled?: number,
];

/** Both ends' distances, and what the proposal was judged by. */
export type Proposal = Omit<WholeLook, "trace"> & {
  readonly ends: readonly [number, number];
  readonly made: boolean;
};

export interface StudiedPicture {
  readonly kind: PictureKind | "photographs";
  readonly n: number;
  readonly scenario: string;
  /** Median width of the bead in the picture, px. */
  readonly widthPx: number;
  readonly beads: number;
  readonly refused: string | null;
  /** Ends found without a click against the true ones, in lengths of what is seen of the bead; or why none. */
  readonly proposal: Proposal | string;
  readonly stations: readonly StudiedStation[];
  readonly seconds: number;
}

/** What is asked of a picture: its pixels, the true toes, the weld line's ends as picked, and metal rolled over a toe. */
export type Asked = Pick<
  TracePicture,
  "scenario" | "image" | "beads" | "left" | "right" | "picked" | "rolls"
>;

/** Traces the bead of one picture along lightly wrong picks and compares with the truth; null: no bead in view. */
export async function studyPicture(
  kind: PictureKind,
  n: number,
  read: ReadStrip,
  readWhole: ReadWhole | null = null,
  picture: Asked = tracePicture(kind, n),
): Promise<StudiedPicture | null> {
  return studyAsked(kind, n, read, readWhole, picture);
}

/** The same of a picture whose truth is known from elsewhere. */
export async function studyAsked(
  kind: StudiedPicture["kind"],
  n: number,
  read: ReadStrip,
  readWhole: ReadWhole | null,
  { scenario, image, beads, left, right, picked, rolls }: Asked,
): Promise<StudiedPicture | null> {
  if (picked === null) return null;
  const widths = left
    .map(([x, y], i) => Math.hypot(x - right[i]![0], y - right[i]![1]))
    .sort((a, b) => a - b);
  const widthPx = widths[widths.length >> 1]!;
  const start = performance.now();
  const trace = await traceBead(image, picked, read);
  const seconds = (performance.now() - start) / 1000;
  const proposal = readWhole === null ? "not asked" : await endsProposed(image, left, right, readWhole, read);
  const common = { kind, n, scenario, beads, widthPx, seconds, proposal };
  if (!trace.ok) return { ...common, refused: trace.issues[0]!.code, stations: [] };
  const marks = rolls.map((line) => ({
    imperfection: "overlap" as const,
    shape: { kind: "outline" as const, points: line.map(([x, y]) => ({ x, y })) },
  }));
  const marked = withoutRolled(trace.value.stations, marks);
  const stations = trace.value.stations
    .map((station, i) => ({ station, rolled: marked[i]!.end ? 1 : 0 }))
    .filter(({ station }) => !station.end)
    .flatMap(({ station, rolled }) => {
      const errors = errorsAt(station, left, right);
      if (errors === null) return [];
      const { upper, lower } = station;
      const [a, b] = errors.map((error) => error / trace.value.widthPx);
      return [
        [a!, b!, upper.spread, lower.spread, upper.sure, lower.sure, rolled].map(
          short,
        ) as unknown as StudiedStation,
      ];
    });
  return { ...common, refused: null, stations };
}

/** How far the two proposed ends lie from the true ones, whichever way round the line runs. */
async function endsProposed(
  image: Pixels,
  left: readonly Pixel[],
  right: readonly Pixel[],
  readWhole: ReadWhole,
  read: ReadStrip,
): Promise<Proposal | string> {
  const look = await lookAtWhole(image, readWhole, read);
  if (!look.ok) return look.issues[0]!.code;
  const { trace, ...said } = look.value;
  const seen = left
    .map(([x, y], i): Point => ({ x: (x + right[i]![0]) / 2, y: (y + right[i]![1]) / 2 }))
    .filter(({ x, y }) => x > 0 && y > 0 && x < image.width && y < image.height);
  const [start, end] = [seen[0]!, seen[seen.length - 1]!];
  const middle = ({ upper, lower }: TraceStation): Point => ({
    x: (upper.at.x + lower.at.x) / 2,
    y: (upper.at.y + lower.at.y) / 2,
  });
  const [a, b] = [middle(trace.stations[0]!), middle(trace.stations[trace.stations.length - 1]!)];
  const turned = distance(a, start) + distance(b, end) > distance(a, end) + distance(b, start);
  const length = distance(start, end);
  const ends = turned
    ? ([distance(a, end) / length, distance(b, start) / length] as const)
    : ([distance(a, start) / length, distance(b, end) / length] as const);
  return { ...said, ends, made: isClear(look.value) };
}

const short = (value: number): number => Math.round(value * 1e5) / 1e5;

/** Both toes' distances outwards from the true toes along the station's own line, px; null where the truth has none. */
export function errorsAt(
  { upper, lower }: TraceStation,
  left: readonly Pixel[],
  right: readonly Pixel[],
): readonly number[] | null {
  const [dx, dy] = [lower.at.x - upper.at.x, lower.at.y - upper.at.y];
  const long = Math.hypot(dx, dy);
  const [ux, uy] = [dx / long, dy / long];
  const cut = (line: readonly Pixel[]): number[] =>
    line.slice(1).flatMap(([bx, by], i) => {
      const [ax, ay] = line[i]!;
      const side = (x: number, y: number): number => (x - upper.at.x) * uy - (y - upper.at.y) * ux;
      const [sa, sb] = [side(ax, ay), side(bx, by)];
      if (sa === sb || sa > 0 === sb > 0) return [];
      const t = sa / (sa - sb);
      return [(ax + t * (bx - ax) - upper.at.x) * ux + (ay + t * (by - ay) - upper.at.y) * uy];
    });
  const nearest = (places: readonly number[], to: number): number | null =>
    places.reduce<number | null>(
      (best, one) => (best === null || Math.abs(one - to) < Math.abs(best - to) ? one : best),
      null,
    );
  const [l, r] = [cut(left), cut(right)];
  const middle = (list: readonly number[]): number | null => nearest(list, long / 2);
  const [lm, rm] = [middle(l), middle(r)];
  if (lm === null || rm === null) return null;
  const [top, bottom] = lm < rm ? [l, r] : [r, l];
  const [a, b] = [nearest(top, 0)!, nearest(bottom, long)!];
  return [a, long - b];
}

/** Half for each toe that is drawn solid and lies off by a quarter of the width. */
export const offAndSolid = ([upper, lower, , , upperSure, lowerSure]: StudiedStation): number =>
  [[upper, upperSure] as const, [lower, lowerSure] as const].filter(
    ([error, sure]) => Math.abs(error) > 0.25 && sure >= reader.solidFrom,
  ).length / 2;
