import type { Rhythm } from "./rhythm";

/** A line of the rule on a profile along its edge: which one it is from the first, and where, samples. */
export interface Tick {
  readonly k: number;
  readonly at: number;
}

const MOST_MISSING = 2;

/**
 * Follows lines from beat to beat, either way from the strongest place, with a beat that may change slowly as perspective
 * has it; ends where some in a row are missing. `profile` rises at a line.
 */
export function followTicks(profile: Float64Array, rhythm: Rhythm): readonly Tick[] {
  const start = firstTick(profile, rhythm.period);
  if (start === null) return [];
  const usual = start.height;
  const onward = walk(profile, start.at, rhythm.period, usual, 1);
  const back = walk(profile, start.at, rhythm.period, usual, -1);
  const all = [...back.reverse(), { k: 0, at: start.at }, ...onward];
  const first = all[0]!.k;
  return all.map(({ k, at }) => ({ k: k - first, at }));
}

/** The place whose own height, that of both neighbours and of theirs are together greatest. */
function firstTick(
  profile: Float64Array,
  period: number,
): { readonly at: number; readonly height: number } | null {
  let [best, least] = [-1, 0];
  const reach = Math.ceil(2 * period);
  const value = (at: number): number => profile[Math.round(at)]!;
  for (let i = reach; i < profile.length - reach; i++) {
    const height = Math.min(
      value(i - period),
      value(i),
      value(i + period),
      value(i - 2 * period),
      value(i + 2 * period),
    );
    if (height > least) [best, least] = [i, height];
  }
  if (best < 0) return null;
  const peak = peakNear(profile, best, 0.3 * period);
  return peak === null ? null : { at: peak.at, height: peak.height };
}

function walk(profile: Float64Array, from: number, period: number, height: number, way: 1 | -1): Tick[] {
  const out: Tick[] = [];
  let [at, beat, usual, k] = [from, period, height, 0];
  for (let missing = 0; missing < MOST_MISSING;) {
    const steps = missing + 1;
    const wanted = at + way * beat * steps;
    if (wanted < 2 || wanted > profile.length - 3) break;
    const peak = peakNear(profile, wanted, 0.3 * beat);
    if (peak === null || peak.height < 0.3 * usual) {
      missing++;
      continue;
    }
    k += way * steps;
    beat += 0.2 * (Math.abs(peak.at - at) / steps - beat);
    usual += 0.1 * (peak.height - usual);
    at = peak.at;
    missing = 0;
    out.push({ k, at });
  }
  return out;
}

/** The highest place within reach and its centre of weight; null at the edge of the reach, where it is another's flank. */
function peakNear(
  profile: Float64Array,
  at: number,
  reach: number,
): { readonly at: number; readonly height: number } | null {
  const [low, high] = [
    Math.max(1, Math.ceil(at - reach)),
    Math.min(profile.length - 2, Math.floor(at + reach)),
  ];
  let best = low;
  for (let i = low; i <= high; i++) if (profile[i]! > profile[best]!) best = i;
  const height = profile[best]!;
  if (!(height > 0) || profile[best - 1]! > height || profile[best + 1]! > height) return null;
  let [weight, sum] = [0, 0];
  for (let i = best; i >= 0 && profile[i]! > 0.4 * height && best - i <= reach; i--)
    [weight, sum] = [weight + profile[i]! - 0.4 * height, sum + i * (profile[i]! - 0.4 * height)];
  for (let i = best + 1; i < profile.length && profile[i]! > 0.4 * height && i - best <= reach; i++)
    [weight, sum] = [weight + profile[i]! - 0.4 * height, sum + i * (profile[i]! - 0.4 * height)];
  return { at: sum / weight, height };
}
