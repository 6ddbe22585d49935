/** A point in the plane. What its unit is, its owner says: photo pixels in `marks`, millimetres in `measure`. */
export interface Point {
  readonly x: number;
  readonly y: number;
}
