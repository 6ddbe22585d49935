import { distance, fitLine, type Point } from "@/lib/geometry";
import { mapPoint, type Calibration } from "@/lib/measure";
import { reader } from "./model";
import type { ToePoint, Trace, TraceStation } from "./types";

type PlaneMap = Calibration["map"];

/** A figure with its standard uncertainty by what it comes from; independent of each other. */
export interface TraceFigure {
  readonly value: number;
  /** Two standard uncertainties, about 95 %. */
  readonly expandedUncertainty: number;
  readonly fromScale: number;
  readonly fromTrace: number;
}

export interface ProfileStation {
  readonly alongMm: number;
  readonly width: TraceFigure;
  /** Both toes sure enough to be drawn solid. */
  readonly sure: boolean;
  readonly end: boolean;
}

export interface WorstStretch {
  readonly fromMm: number;
  readonly toMm: number;
  readonly differenceMm: number;
  /** A difference that the reader's own scatter may make on an even bead, mm: a smaller one says nothing of the bead. */
  readonly doubtMm: number;
}

export interface BeadProfile {
  readonly stations: readonly ProfileStation[];
  /** Over all stations but those at the rounded ends. */
  readonly mean: TraceFigure;
  /** Standard deviation of the width over its mean: a ratio. The trace's own scatter is in it, so the bead's is no more. */
  readonly spread: number;
  readonly widest: ProfileStation;
  readonly narrowest: ProfileStation;
  /** The 25 mm in which the width differs most; null on a shorter bead. */
  readonly worst25: WorstStretch | null;
  /** Greatest distance of the middle from the straight line fitted to it, mm. */
  readonly offStraight: TraceFigure;
  /** Root mean square of each toe about its own course over 10 mm, mm; the trace's own scatter is in it. */
  readonly waviness: readonly [number, number];
  /** Share of the length between the ends on which both toes are sure. */
  readonly sureShare: number;
}

const WORST_MM = 25;
const COURSE_MM = 10;
/** Of a hundred and fifty scattered widths the largest and the smallest lie less than seven deviations of one apart: five times root two. */
const RANGE_OF_SCATTER = 5;

/**
 * The trace in millimetres. The scale's uncertainty comes from the calibration's own variations, the trace's from the
 * reader's spread. Null where fewer than eight stations lie between the ends.
 */
export function beadProfile(calibration: Calibration, trace: Pick<Trace, "stations">): BeadProfile | null {
  const inner = trace.stations.filter((station) => !station.end);
  if (inner.length < 8) return null;
  const alongs = alongMm(calibration.map, trace.stations);
  const stations = trace.stations.map((station, i) => profileStation(calibration, station, alongs[i]!));
  const measured = stations.filter((station) => !station.end);
  const meanOf = (map: PlaneMap): number => mean(inner.map((station) => widthMm(map, station)));
  const value = meanOf(calibration.map);
  const byWidth = [...measured].sort((a, b) => a.width.value - b.width.value);
  return {
    stations,
    mean: figure(value, fromScale(calibration, meanOf), reader.commonWidthSigma * value),
    spread: spreadOf(measured),
    widest: byWidth[byWidth.length - 1]!,
    narrowest: byWidth[0]!,
    worst25: worstStretch(measured),
    offStraight: offStraight(calibration, inner, value),
    waviness: [waviness(calibration, inner, "upper"), waviness(calibration, inner, "lower")],
    sureShare: measured.filter(({ sure }) => sure).length / measured.length,
  };
}

function figure(value: number, scale: number, trace: number): TraceFigure {
  return { value, expandedUncertainty: 2 * Math.hypot(scale, trace), fromScale: scale, fromTrace: trace };
}

/** Standard uncertainty that the scale puts on a figure: half its difference under each variation, in squares. */
function fromScale({ variations }: Calibration, of: (map: PlaneMap) => number): number {
  return Math.hypot(
    ...variations.map(({ plus, minus, odds }) => {
      const apart = of(plus) - of(minus);
      return odds === undefined ? apart / 2 : Math.sqrt(odds * (1 - odds)) * apart;
    }),
  );
}

const widthMm = (map: PlaneMap, { upper, lower }: TraceStation): number =>
  distance(mapPoint(map, upper.at), mapPoint(map, lower.at));

function profileStation(calibration: Calibration, station: TraceStation, alongMm: number): ProfileStation {
  const of = (map: PlaneMap): number => widthMm(map, station);
  const value = of(calibration.map);
  const mmPerPx = value / Math.max(1e-9, station.widthPx);
  const { upper, lower } = station;
  const own = Math.hypot(upper.sigmaPx, lower.sigmaPx) * mmPerPx;
  const trace = Math.hypot(own, reader.commonWidthSigma * value);
  const sure = Math.min(upper.sure, lower.sure) >= reader.solidFrom;
  return { alongMm, width: figure(value, fromScale(calibration, of), trace), sure, end: station.end };
}

/** Along the middle of the bead from its first station, mm. */
function alongMm(map: PlaneMap, stations: readonly TraceStation[]): readonly number[] {
  const middles = stations.map(({ upper, lower }) => mapPoint(map, middleOf(upper.at, lower.at)));
  // Step by step the raggedness would be walked too: the way is taken between middles some stations apart.
  const stride = Math.max(1, Math.floor(stations.length / 40));
  const out: number[] = [];
  let sum = 0;
  for (let i = 0; i < middles.length; i++) {
    const knot = i - (i % stride);
    if (i === knot && i > 0) sum += distance(middles[knot - stride]!, middles[knot]!);
    out.push(sum + (i === knot ? 0 : distance(middles[knot]!, middles[i]!)));
  }
  return out;
}

const middleOf = (a: Point<"photo">, b: Point<"photo">): Point<"photo"> => ({
  x: (a.x + b.x) / 2,
  y: (a.y + b.y) / 2,
});

function spreadOf(stations: readonly ProfileStation[]): number {
  const widths = stations.map(({ width }) => width.value);
  const middle = mean(widths);
  return Math.sqrt(mean(widths.map((w) => (w - middle) ** 2))) / middle;
}

/** What is uncertain of one width by itself, mm; what all widths of a picture share takes no part in a difference. */
const ownScatter = ({ width: { value, fromTrace } }: ProfileStation): number =>
  Math.sqrt(Math.max(0, fromTrace ** 2 - (reader.commonWidthSigma * value) ** 2));

function worstStretch(stations: readonly ProfileStation[]): WorstStretch | null {
  let worst: WorstStretch | null = null;
  for (let i = 0, k = 0; i < stations.length; i++) {
    while (k < stations.length && stations[k]!.alongMm < stations[i]!.alongMm + WORST_MM) k++;
    if (k === stations.length) break;
    const byWidth = stations.slice(i, k + 1).toSorted((a, b) => a.width.value - b.width.value);
    const [least, most] = [byWidth[0]!, byWidth[byWidth.length - 1]!];
    const differenceMm = most.width.value - least.width.value;
    const doubtMm = RANGE_OF_SCATTER * Math.hypot(ownScatter(least), ownScatter(most));
    if (worst === null || differenceMm > worst.differenceMm)
      worst = { fromMm: stations[i]!.alongMm, toMm: stations[i]!.alongMm + WORST_MM, differenceMm, doubtMm };
  }
  return worst;
}

function offStraight(
  calibration: Calibration,
  inner: readonly TraceStation[],
  widthOfBeadMm: number,
): TraceFigure {
  const of = (map: PlaneMap): number => {
    const middles = inner.map(({ upper, lower }) => mapPoint(map, middleOf(upper.at, lower.at)));
    const line = fitLine(middles);
    if (line === null) return 0;
    const { through, direction } = line;
    return Math.max(
      ...middles.map((p) => Math.abs(direction.x * (p.y - through.y) - direction.y * (p.x - through.x))),
    );
  };
  return figure(
    of(calibration.map),
    fromScale(calibration, of),
    (reader.commonWidthSigma * widthOfBeadMm) / Math.SQRT2,
  );
}

function waviness(calibration: Calibration, inner: readonly TraceStation[], toe: "upper" | "lower"): number {
  const points = inner.map((station): ToePoint => station[toe]);
  const places = points.map(({ at }) => mapPoint(calibration.map, at));
  const residuals = places.map((place) => {
    const near = places.filter((other) => distance(other, place) < COURSE_MM / 2);
    const line = fitLine(near);
    if (line === null) return 0;
    const { through, direction } = line;
    return direction.x * (place.y - through.y) - direction.y * (place.x - through.x);
  });
  return Math.sqrt(mean(residuals.map((r) => r * r)));
}

const mean = (list: readonly number[]): number => list.reduce((sum, value) => sum + value, 0) / list.length;
