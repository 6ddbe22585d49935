/** A photo to work on, as a canvas needs it. */
export interface CanvasPhoto {
  /** Upright; may have fewer pixels than the original, marks stay in the original's. */
  readonly viewUrl: string;
  /** Shown until the view image has arrived; the view itself where no other is there. */
  readonly smallUrl: string;
  /** Upright original, pixels. */
  readonly widthPx: number;
  readonly heightPx: number;
  /** Said to a screen reader, for example "Photo 2, back side". */
  readonly name?: string;
}
