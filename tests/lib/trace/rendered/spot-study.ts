import { createRandom, mixSeed, type Random } from "@/demo-images/noise/random";
import type { Point } from "@/lib/geometry";
import { traceBead, type Pixels, type ReadStrip, type ReadTile } from "@/lib/trace";
import { findSpots, usualWidth, type Spot } from "@/lib/trace/find-spots";
import { spotScale } from "@/lib/trace/spot-tiles";
import { besideBead, isInZone, type BesideBead } from "@/lib/trace/spot-zone";
import { spotPictureOf, type SpotKind } from "./spot-pictures";
import { matchSpots, type Round } from "./spot-match";

/** Across in pixels as read, and 1 where it is asked for: in the zone of its kind. */
export type StudiedTruth = readonly [kind: Spot["kind"], acrossPx: number, inZone: 0 | 1];

/**
 * One suggestion: how sure, across as said, which truth it is or -1; and of the boxes of the same size laid at random
 * instead of it, how many hit any truth, and how many one that is asked for and large enough.
 */
export type StudiedSpot = readonly [
  kind: Spot["kind"],
  sure: number,
  acrossPx: number,
  truth: number,
  boxesRight: number,
  boxesAsked: number,
];

export interface SpotLine {
  readonly study: "spots";
  readonly by: "network" | "classical";
  readonly kind: SpotKind;
  readonly n: number;
  readonly scenario: string;
  readonly refused: string | null;
  readonly truths: readonly StudiedTruth[];
  readonly found: readonly StudiedSpot[];
  readonly seconds: number;
}

/** Smaller than that nobody is asked for, and smaller than the other nobody would mark; pixels as read. */
export const ASKED_PX = 9;
const SEEN_PX = 5;
/** So many boxes are laid at random for each suggestion. */
export const BOXES = 20;
/** All is written down that is surer than this; what is suggested is settled afterwards. */
const LEAST_SURE = 0.08;

/** Traces a picture's bead, looks for holes and spatter about it and says what of it is true; null: no bead in view. */
export async function spotLine(
  kind: SpotKind,
  n: number,
  read: ReadStrip,
  by: Readonly<Partial<Record<SpotLine["by"], ReadTile>>>,
): Promise<readonly SpotLine[]> {
  const { scenario, image, spots, picked } = spotPictureOf(kind, n);
  if (picked === null) return [];
  const traced = await traceBead(image, picked, read);
  const common = { study: "spots", kind, n, scenario } as const;
  const ways = Object.entries(by) as [SpotLine["by"], ReadTile][];
  if (!traced.ok)
    return ways.map(([way]) => ({
      ...common,
      by: way,
      refused: traced.issues[0]!.code,
      truths: [],
      found: [],
      seconds: 0,
    }));
  const { stations } = traced.value;
  const widthPx = usualWidth(stations);
  const scale = spotScale(widthPx);
  const beside = besideBead(stations, widthPx);
  const truths = spots
    .map((spot): Round => ({
      kind: spot.kind,
      x: spot.x * scale,
      y: spot.y * scale,
      radius: spot.radiusPx * scale,
    }))
    .filter(({ radius }) => 2 * radius >= SEEN_PX);
  const inZone = (round: Round): boolean =>
    isInZone(round.kind, beside({ x: round.x / scale, y: round.y / scale }));
  const lines: SpotLine[] = [];
  for (const [way, readTile] of ways) {
    const start = performance.now();
    const rule = { holeFrom: LEAST_SURE, spatterFrom: LEAST_SURE, leastAcrossPx: ASKED_PX };
    const found = await findSpots(image, stations, readTile, rule);
    const seconds = (performance.now() - start) / 1000;
    const asked = truths.map((truth) => inZone(truth) && 2 * truth.radius >= ASKED_PX);
    const random = createRandom(mixSeed(n, 4711));
    lines.push({
      ...common,
      by: way,
      refused: null,
      truths: truths.map((truth) => [truth.kind, short(2 * truth.radius), inZone(truth) ? 1 : 0]),
      found: judged(found, truths, asked, scale, () => boxPlace(image, beside, random)),
      seconds,
    });
  }
  return lines;
}

const short = (value: number): number => Math.round(value * 1e3) / 1e3;

function judged(
  found: readonly Spot[],
  truths: readonly Round[],
  asked: readonly boolean[],
  scale: number,
  place: () => (kind: Spot["kind"]) => Point<"photo">,
): readonly StudiedSpot[] {
  const sorted = found.toSorted((a, b) => b.sure - a.sure);
  const round = ({ kind, radiusPx }: Spot, at: Point<"photo">): Round => ({
    kind,
    x: at.x * scale,
    y: at.y * scale,
    radius: radiusPx * scale,
  });
  const right = matchSpots(
    truths,
    sorted.map((spot) => round(spot, spot.at)),
  );
  const draws = Array.from({ length: BOXES }, () =>
    matchSpots(
      truths,
      sorted.map((spot) => round(spot, place()(spot.kind))),
    ),
  );
  return sorted.map(({ kind, sure, radiusPx }, i) => [
    kind,
    short(sure),
    short(2 * radiusPx * scale),
    right[i]!,
    draws.filter((draw) => draw[i]! >= 0).length,
    draws.filter((draw) => draw[i]! >= 0 && asked[draw[i]!]).length,
  ]);
}

/** Anywhere on the photo in the zone of its kind, every place as likely. */
function boxPlace(
  { width, height }: Pixels,
  beside: (at: Point<"photo">) => BesideBead,
  random: Random,
): (kind: Spot["kind"]) => Point<"photo"> {
  return (kind) => {
    for (;;) {
      const at = { x: width * random.next(), y: height * random.next() };
      if (isInZone(kind, beside(at))) return at;
    }
  };
}
