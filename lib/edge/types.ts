import type { Point } from "@/lib/geometry";

/** A piece of a photo in shades of grey, row by row, one number a pixel, 0 to 255. */
export interface GreyPatch {
  readonly columns: number;
  readonly rows: number;
  readonly grey: Uint8Array | Float32Array;
}

/** Which piece of the photo is looked at, and how finely. */
export interface EdgeWindow {
  /** Its top left corner, photo pixels. */
  readonly corner: Point<"photo">;
  /** Photo pixels that one pixel of the patch covers, each way. */
  readonly stepPx: number;
  readonly columns: number;
  readonly rows: number;
}
