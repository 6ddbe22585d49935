import { distance } from "@/lib/geometry";
import type { Toes, TracedPoint } from "@/lib/marks";
import { reader } from "./model";
import type { ToePoint, Trace, TraceStation } from "./types";

/** Places of each toe that a drawing keeps. */
const KEPT = 120;

const round = (value: number, places: number): number => Math.round(value * 10 ** places) / 10 ** places;
const kept = ({ at, sigmaPx, sure }: ToePoint): TracedPoint => ({
  x: round(at.x, 2),
  y: round(at.y, 2),
  sigmaPx: round(sigmaPx, 3),
  sure: round(sure, 3),
});

/** A trace as a drawing holds it. */
export function toesOf({ stations }: Trace): Toes {
  const step = Math.max(1, (stations.length - 1) / (KEPT - 1));
  const count = Math.min(KEPT, stations.length);
  const picked = Array.from({ length: count }, (_, i) => stations[Math.round(i * step)]!);
  return {
    origin: "traced",
    reader: reader.version,
    upper: picked.map(({ upper }) => kept(upper)),
    lower: picked.map(({ lower }) => kept(lower)),
  };
}

/** The stations that a drawing's toes make; a place somebody moved counts with its pick's own uncertainty. */
export function stationsOf({ upper, lower }: Toes): readonly TraceStation[] {
  const count = Math.min(upper.length, lower.length);
  const pairs = Array.from({ length: count }, (_, i) => [upper[i]!, lower[i]!] as const);
  const widths = pairs.map(([a, b]) => distance(a, b));
  const usual = [...widths].sort((a, b) => a - b)[count >> 1] ?? 0;
  const alongs = [0];
  for (let i = 1; i < count; i++) {
    const [from, to] = [pairs[i - 1]!, pairs[i]!];
    const middle = ([a, b]: (typeof pairs)[number]) => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
    alongs.push(alongs[i - 1]! + distance(middle(from), middle(to)));
  }
  const whole = alongs[alongs.length - 1] ?? 0;
  const point = ({ x, y, sigmaPx, sure }: TracedPoint): ToePoint => ({
    at: { x, y },
    sigmaPx,
    sure,
    spread: 0,
  });
  return pairs.map(([a, b], i) => ({
    alongPx: alongs[i]!,
    upper: point(a),
    lower: point(b),
    widthPx: widths[i]!,
    end: Math.min(alongs[i]!, whole - alongs[i]!) < reader.endWidths * usual,
  }));
}
