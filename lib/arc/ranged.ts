/** A figure of a model with the bounds its error leaves. */
export interface Ranged {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly relativeError: number;
}

export const ranged = (value: number, relativeError: number): Ranged => ({
  value,
  low: value / (1 + relativeError),
  high: value * (1 + relativeError),
  relativeError,
});
