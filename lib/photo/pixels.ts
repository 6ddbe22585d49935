/** 8-bit sRGB, three channels, upright, longest side at most that of `view`. */
export interface Pixels {
  readonly data: Buffer;
  readonly widthPx: number;
  readonly heightPx: number;
}
