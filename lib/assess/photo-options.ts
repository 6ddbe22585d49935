import { defaultMeasureOptions, type MeasureOptions } from "@/lib/measure";

/**
 * How a bead's photo is measured: its own size (null: unknown), and what one pick on it is worth when it was viewed
 * `viewedWidthPx` screen pixels wide.
 */
export function photoOptions(
  size: { readonly widthPx: number; readonly heightPx: number } | null,
  viewedWidthPx: number,
): MeasureOptions {
  return {
    ...defaultMeasureOptions,
    photo: size && { widthPx: size.widthPx, heightPx: size.heightPx },
    photoPxPerViewPx: size ? Math.max(1, size.widthPx / viewedWidthPx) : 1,
  };
}
