import { distance, type Point } from "@/lib/geometry";
import type { Drawing, Mark, Toes } from "@/lib/marks";
import type { Calibration } from "@/lib/measure";
import { beadProfile, type BeadProfile } from "./profile";
import { usuallySure } from "./sure";
import { stationsOf } from "./toes";
import type { TraceStation } from "./types";

/** Where half of the stations are no surer than this, the whole of the trace is a guess: the reader halves what it doubts. */
const GUESS = 0.5;

/** Whether toes are so much of a guess that no width is stated of them; places somebody moved are sure. */
export const isGuess = (stations: readonly TraceStation[]): boolean => usuallySure({ stations }) <= GUESS;

/**
 * The profile of toes on a drawing. Where overlap is marked, metal rolled over the toe and the reader sees the roll's edge:
 * there the toes are in no figure. Null where the toes are a guess as a whole, or too few are left.
 */
export function drawnProfile(
  calibration: Calibration,
  toes: Toes,
  marks: Drawing["marks"],
): BeadProfile | null {
  const stations = stationsOf(toes);
  if (isGuess(stations)) return null;
  return beadProfile(calibration, { stations: withoutRolled(stations, marks) });
}

/** Stations alongside a mark of overlap count as an end does: drawn, and in no figure. */
export function withoutRolled(
  stations: readonly TraceStation[],
  marks: readonly Pick<Mark, "imperfection" | "shape">[],
): readonly TraceStation[] {
  const rolled = marks
    .filter(({ imperfection }) => imperfection === "overlap")
    .map(({ shape }) => reachOf(stations, shape));
  return stations.map((station) =>
    rolled.some(([from, to]) => station.alongPx >= from && station.alongPx <= to)
      ? { ...station, end: true }
      : station,
  );
}

/** From where to where along the bead a mark reaches, photo pixels; a spot by its radius. */
function reachOf(stations: readonly TraceStation[], shape: Mark["shape"]): readonly [number, number] {
  const beside = (place: Point<"photo">): number => {
    const off = ({ upper, lower }: TraceStation): number =>
      distance(place, { x: (upper.at.x + lower.at.x) / 2, y: (upper.at.y + lower.at.y) / 2 });
    return stations.reduce((best, one) => (off(one) < off(best) ? one : best)).alongPx;
  };
  if (shape.kind === "point") {
    const [at, radius] = [beside(shape.at), shape.radius ?? 0];
    return [at - radius, at + radius];
  }
  const alongs = shape.points.map(beside);
  return [Math.min(...alongs), Math.max(...alongs)];
}
