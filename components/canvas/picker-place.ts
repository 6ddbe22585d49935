/** A rectangle on the screen, CSS pixels from its top left corner. */
export interface ScreenBox {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Where the picker lies: a panel at one side, over the full height, or a sheet from below. */
export type PickerPlace =
  | { readonly kind: "side"; readonly left: number; readonly width: number }
  | { readonly kind: "below"; readonly top: number };

/** A row with picture, words and the button beside them needs so much; more than the widest is only longer lines. */
const WIDTH = { least: 340, most: 480 } as const;
/** Between the spot and the panel; and between the panel and the edge of the screen. */
const GAP = 24;
const EDGE = 8;
/** A sheet leaves this share of a screen to the photo. */
const PHOTO_SHARE = 0.42;

/**
 * Beside the spot, never over it: off the whole photo where its right side leaves room for a panel, else to the spot's
 * right, else to its left, else below it. Where the spot is not known the panel keeps to the right. Below, it is for the
 * photo to bring the spot into what is left above.
 */
export function placePicker(
  spot: ScreenBox | null,
  screen: { readonly width: number; readonly height: number },
  photo: Pick<ScreenBox, "right"> | null = null,
): PickerPlace {
  const offPhoto = photo !== null && screen.width - EDGE - photo.right - GAP >= WIDTH.least ? photo.right : 0;
  const from = spot === null ? screen.width - EDGE - WIDTH.most : Math.max(spot.right, offPhoto) + GAP;
  const right = screen.width - EDGE - Math.max(EDGE, from);
  if (isWide(screen) && right >= WIDTH.least)
    return { kind: "side", left: Math.max(EDGE, from), width: Math.min(WIDTH.most, right) };
  const left = (spot?.left ?? 0) - GAP - EDGE;
  if (isWide(screen) && left >= WIDTH.least) {
    const width = Math.min(WIDTH.most, left);
    return { kind: "side", left: left + EDGE - width, width };
  }
  return { kind: "below", top: Math.round(screen.height * PHOTO_SHARE) };
}

/** A screen on which a photo and a panel stand side by side: a phone held upright is none. */
const isWide = ({ width, height }: { width: number; height: number }): boolean =>
  width >= 760 || width > 1.3 * height;

/** How far down the photo must go (negative: up) so that the spot lies in the middle of what a sheet leaves free; 0: it is free. */
export function shiftIntoFree(spot: ScreenBox, free: Pick<ScreenBox, "top" | "bottom">): number {
  const isFree = spot.top >= free.top + EDGE && spot.bottom <= free.bottom - EDGE;
  return isFree ? 0 : (free.top + free.bottom) / 2 - (spot.top + spot.bottom) / 2;
}
