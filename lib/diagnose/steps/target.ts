/** One variable at a time, in steps small enough to see what they do: common steps, from memory. */
export const STEP = { volts: 1, feedShare: 0.1, ctwdMm: 4, travelShare: 0.2, ampsShare: 0.1 };

/** What a person turns at once, as a share of the reading, however far the aim lies. Common practice. */
export const AT_ONCE = 0.2;

/** Out of position feed and volts stand 30 to 40 % below their flat settings; the middle. Common practice. */
export const OUT_OF_POSITION_SHARE = 0.65;

export const ONE_STEP = "One step the right way; change nothing else.";
export const BACK_IN = "Back inside what this wire is run at.";
export const PART_OF_IT = "As far as one turns at once; the rest after the next bead.";

/** Both ends belong to it. */
export interface Bounds {
  readonly low: number;
  readonly high: number;
}

const within = ({ low, high }: Bounds, value: number): number => Math.max(low, Math.min(high, value));

export interface Target {
  readonly to: number;
  /** The aim lies further: this is as far as one goes at once. */
  readonly partly: boolean;
  readonly backIn: boolean;
}

/**
 * Where to turn a reading that stands at `from`, towards `aim`: never further than `AT_ONCE` of it, and never out of
 * `bounds`, what the wire is run at. A reading outside the bounds comes back at least to their nearer quarter, for a
 * smaller step would not show. The step always goes the way of `aim`, or nowhere.
 */
export function targetFor(from: number, aim: number, bounds: Bounds | null): Target {
  const most = AT_ONCE * Math.abs(from);
  const turned = from + Math.max(-most, Math.min(most, aim - from));
  if (bounds === null) return { to: turned, partly: turned !== aim, backIn: false };
  const up = aim > from;
  const quarter = (bounds.high - bounds.low) / 4;
  if (up && from < bounds.low) {
    const to = within(bounds, Math.max(turned, bounds.low + quarter));
    return { to, partly: false, backIn: true };
  }
  if (!up && from > bounds.high) {
    const to = within(bounds, Math.min(turned, bounds.high - quarter));
    return { to, partly: false, backIn: true };
  }
  // Already past the far end: nothing more the same way.
  const to = up
    ? Math.max(from, Math.min(turned, bounds.high))
    : Math.min(from, Math.max(turned, bounds.low));
  return { to, partly: to === turned && turned !== aim, backIn: false };
}

export const reasonFor = ({ partly, backIn }: Target, plain: string): string =>
  backIn ? BACK_IN : partly ? PART_OF_IT : plain;

/**
 * How much of a usual step is left before the bounds end: 1 for a whole one, 0 at their edge. Less change cures less.
 * Below a quarter of a step nobody sees a difference on the bead: 0. Own estimate.
 */
export function stepShare(from: number | null, to: number | null, step: number): number {
  if (from === null || to === null || step === 0) return 1;
  const share = Math.min(1, Math.abs((to - from) / step));
  return share < 0.25 ? 0 : share;
}
