/**
 * What on a control chart asks for a reason. The first two are on by default; the zone rules raise the false alarms
 * of a stable process and are for whoever asks for them. The zone tests of the Statistical Quality Control Handbook of 1956, from memory;
 * also in the NIST/SEMATECH handbook of statistics, 6.3.2.
 */
export const signalRules = [
  "beyond-limit",
  "eight-on-one-side",
  "two-of-three-beyond-two-sigma",
  "four-of-five-beyond-one-sigma",
] as const;
export type SignalRule = (typeof signalRules)[number];
export const usualRules: readonly SignalRule[] = ["beyond-limit", "eight-on-one-side"];

/** `window` points in a row, at least `need` of them more than `sigmas` from the centre, all on one side of it. */
interface ZoneTest {
  readonly window: number;
  readonly need: number;
  readonly sigmas: number;
}
const zoneTests: Readonly<Record<Exclude<SignalRule, "beyond-limit">, ZoneTest>> = {
  "eight-on-one-side": { window: 8, need: 8, sigmas: 0 },
  "two-of-three-beyond-two-sigma": { window: 3, need: 2, sigmas: 2 },
  "four-of-five-beyond-one-sigma": { window: 5, need: 4, sigmas: 1 },
};

export interface Signal {
  readonly rule: SignalRule;
  readonly side: "above" | "below";
  /** Indices of the points, first and last, that belong to it; overlapping windows of one rule and side are one signal. */
  readonly from: number;
  readonly to: number;
}

/** Point as signals see it: distance from the centre line in its own sigmas; a point on the line has 0 and no side. */
export interface ZonePoint {
  readonly sigmas: number;
  readonly beyondLimit: "above" | "below" | null;
}

/** Signals in order of rule, then side, then place. */
export function findSignals(points: readonly ZonePoint[], rules: readonly SignalRule[]): readonly Signal[] {
  return rules.flatMap((rule) =>
    (["above", "below"] as const).flatMap((side) => {
      const spans =
        rule === "beyond-limit"
          ? points.flatMap((point, i) => (point.beyondLimit === side ? [[i, i] as const] : []))
          : joinSpans(zoneSpans(points, zoneTests[rule], side));
      return spans.map(([from, to]) => ({ rule, side, from, to }));
    }),
  );
}

type Span = readonly [from: number, to: number];

/** A window counts when its last point is itself beyond: the alarm is raised by a point, not by its absence. */
function zoneSpans(points: readonly ZonePoint[], test: ZoneTest, side: "above" | "below"): readonly Span[] {
  const beyond = points.map(({ sigmas }) =>
    side === "above" ? sigmas > test.sigmas : -sigmas > test.sigmas,
  );
  return points.flatMap((_, end) => {
    const start = end - test.window + 1;
    if (!beyond[end]) return [];
    const hits = beyond.flatMap((hit, i) => (hit && i >= start && i <= end ? [i] : []));
    return hits.length >= test.need ? [[hits[0] ?? end, end] as const] : [];
  });
}

function joinSpans(spans: readonly Span[]): readonly Span[] {
  return spans.reduce<Span[]>((joined, span) => {
    const last = joined[joined.length - 1];
    if (last && span[0] <= last[1]) joined[joined.length - 1] = [last[0], span[1]];
    else joined.push(span);
    return joined;
  }, []);
}
