import { fail, issue, ok, type Result } from "@/lib/base";
import { clamp } from "@/lib/numeric";
import type { TrendIssue } from "./issue";
import { shareOf, type Share } from "./share";
import { findSignals, usualRules, type Signal, type SignalRule } from "./signals";

/** One period or lot: `count` rejected out of `of` looked at. */
export interface Sample {
  readonly label: string;
  readonly count: number;
  readonly of: number;
  readonly beadIds: readonly string[];
}

export interface PChartPoint {
  readonly label: string;
  readonly share: Share;
  /** Limits for this sample's own size, 0 to 1. */
  readonly lowerLimit: number;
  readonly upperLimit: number;
  /** Strictly outside; a point on its limit is inside. */
  readonly beyondLimit: "above" | "below" | null;
  /**
   * Fewer than 5 expected of either kind: three-sigma limits rest on the normal approximation, which is poor here.
   * Common practice (n p >= 5), no source read.
   */
  readonly limitsDoubtful: boolean;
  readonly beadIds: readonly string[];
}

export interface PChart {
  /** p-bar: everything found out of everything looked at, over all samples. */
  readonly centre: Share;
  readonly points: readonly PChartPoint[];
  readonly signals: readonly Signal[];
  /** Fewer than 20 samples: limits are trial limits (20 to 25 samples: common practice of the textbooks, from memory). */
  readonly trialLimits: boolean;
  /** Labels of samples of size 0: nothing to draw. */
  readonly skipped: readonly string[];
}

const SAMPLES_FOR_LIMITS = 20;
const EXPECTED_FOR_NORMAL = 5;

/**
 * p-chart with sample sizes n_i that may differ: centre p-bar, limits p-bar ± 3 sqrt(p-bar (1 - p-bar) / n_i), cut to
 * [0, 1]: NIST/SEMATECH handbook of statistics, 6.3.3.2, seen in part. Issues: `sample-impossible`, `no-samples`.
 */
export function pChart(
  samples: readonly Sample[],
  rules: readonly SignalRule[] = usualRules,
): Result<PChart, TrendIssue> {
  const wrong = samples.flatMap(({ count, of }, i) =>
    Number.isSafeInteger(count) && Number.isSafeInteger(of) && count >= 0 && count <= of
      ? []
      : [issue("sample-impossible" as const, [i], { count, of })],
  );
  if (wrong.length > 0) return fail<TrendIssue>(...wrong);
  const drawn = samples.filter(({ of }) => of > 0);
  if (drawn.length === 0) return fail(issue("no-samples"));
  const found = drawn.reduce((sum, { count }) => sum + count, 0);
  const looked = drawn.reduce((sum, { of }) => sum + of, 0);
  const points = drawn.map((sample) => pointOf(sample, found / looked));
  return ok({
    centre: shareOf(found, looked),
    points: points.map(({ point }) => point),
    signals: findSignals(
      points.map(({ sigmas, point }) => ({ sigmas, beyondLimit: point.beyondLimit })),
      rules,
    ),
    trialLimits: drawn.length < SAMPLES_FOR_LIMITS,
    skipped: samples.filter(({ of }) => of === 0).map(({ label }) => label),
  });
}

function pointOf(
  { label, count, of, beadIds }: Sample,
  centre: number,
): { readonly point: PChartPoint; readonly sigmas: number } {
  const sigma = Math.sqrt((centre * (1 - centre)) / of);
  const lowerLimit = clamp(centre - 3 * sigma, 0, 1);
  const upperLimit = clamp(centre + 3 * sigma, 0, 1);
  const value = count / of;
  const point: PChartPoint = {
    label,
    share: shareOf(count, of),
    lowerLimit,
    upperLimit,
    beyondLimit: value > upperLimit ? "above" : value < lowerLimit ? "below" : null,
    limitsDoubtful: Math.min(centre, 1 - centre) * of < EXPECTED_FOR_NORMAL,
    beadIds,
  };
  // All alike (p-bar 0 or 1): every point lies on the line, none has a side.
  return { point, sigmas: sigma === 0 ? 0 : (value - centre) / sigma };
}
