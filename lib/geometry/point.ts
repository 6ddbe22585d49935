/** No space named: a point or map of it goes with every other. */
// eslint-disable-next-line @typescript-eslint/no-explicit-any -- the one type that fits every space, written once
export type AnySpace = any;

declare const space: unique symbol;

/**
 * A point or vector of one plane, which the rooms name ("photo", "plane"); geometry only keeps them apart. The space is known to the compiler alone and nothing is stored of it: points of two
 * spaces do not mix, and only a map (`Homography`) leads from one to another. A bare `{ x, y }` belongs to none and enters
 * whichever it is handed to, so bare points are written where a space is entered. A type and no interface, because
 * drawings are stored as JSON.
 */
export type Point<S = AnySpace> = {
  readonly x: number;
  readonly y: number;
  /** Never there. Both ways round, so that one space is not part of another. */
  readonly [space]?: (within: S) => S;
};
