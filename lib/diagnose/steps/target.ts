/** One variable at a time, in steps small enough to see what they do: common steps, from memory. */
export const STEP = { volts: 1, feedShare: 0.1, ctwdMm: 4, travelShare: 0.2, ampsShare: 0.1 };

/** What a person turns at once, as a share of the reading, however far the aim lies. Common practice. */
export const AT_ONCE = 0.2;

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

/** This far out of the bounds, as a share of their end, a reading comes back to the nearer quarter; less far, less. */
const WELL_OUT = 0.1;

/**
 * Where to turn a reading that stands at `from`, towards `aim`: never further than `AT_ONCE` of it, and never out of
 * `bounds`, what the wire is run at. A reading outside the bounds comes back inside at once, the further out the further in
 * (to their nearer quarter at most, and no more than a quarter of their end), for a smaller step would not show. The step goes the way of `aim`, or nowhere, and
 * moves little when the reading moves little.
 */
export function targetFor(from: number, aim: number, bounds: Bounds | null): Target {
  const most = AT_ONCE * Math.abs(from);
  const turned = from + Math.max(-most, Math.min(most, aim - from));
  if (bounds === null) return { to: turned, partly: turned !== aim, backIn: false };
  const up = aim > from;
  const { low, high } = bounds;
  const quarter = (high - low) / 4;
  if (up && from < low) {
    const inward = Math.min(quarter, low / 4) * Math.min(1, (low - from) / (WELL_OUT * low));
    return { to: within(bounds, Math.max(turned, low + inward)), partly: false, backIn: true };
  }
  if (!up && from > high) {
    const inward = Math.min(quarter, high / 4) * Math.min(1, (from - high) / (WELL_OUT * high));
    return { to: within(bounds, Math.min(turned, high - inward)), partly: false, backIn: true };
  }
  // Already past the far end: nothing more the same way.
  const to = up ? Math.max(from, Math.min(turned, high)) : Math.min(from, Math.max(turned, low));
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
