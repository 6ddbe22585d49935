/** What lens, sensor and phone do to the light. */
export interface Development {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly exposureEv: number;
  /** Error of the white balance: positive is too warm, 0.1 is a clear cast. */
  readonly warmth: number;
  readonly vignette: number;
  /** Standard deviation of the noise at mid-grey, in 8-bit levels. */
  readonly noise: number;
  readonly motionPx: number;
  /** 0 everything sharp; sigma in px per unit of |1/z - 1/zf| in 1/mm. */
  readonly defocusPxMm: number;
  readonly focusMm: number;
  /** Sigma of the lens, px. */
  readonly lensBlurPx: number;
  readonly bloom: number;
  readonly sharpen: number;
  readonly seed: number;
}
