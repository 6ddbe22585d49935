import { add, subtract, type Point } from "@/lib/geometry";
import type { PhotoPoint } from "@/lib/marks";

/** How the photo lies in the canvas box. Never in the undo history. */
export interface View {
  /** CSS pixels per photo pixel. */
  readonly zoom: number;
  /** Where the photo's top left corner is in the box, CSS pixels. */
  readonly pan: Point<"view">;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** One photo pixel never grows beyond this many CSS pixels: past it there is nothing more to see. */
export const MOST_ZOOM = 12;
/** From so many CSS pixels to a photo pixel on, pixels are shown as they are, and points with the pixel they lie in. */
export const PIXEL_ZOOM = 6;
const FIT_MARGIN = 10;

export const toScreen = ({ zoom, pan }: View, photo: Point<"photo">): Point<"view"> => ({
  x: photo.x * zoom + pan.x,
  y: photo.y * zoom + pan.y,
});
export function toPhoto({ zoom, pan }: View, screen: Point<"view">): Point<"photo"> {
  const { x, y } = subtract(screen, pan);
  return { x: x * (1 / zoom), y: y * (1 / zoom) };
}

/** A way on the screen as the way on the photo that lies under it. */
export const wayOnPhoto = ({ zoom }: View, way: Point<"view">): Point<"photo"> => ({
  x: way.x / zoom,
  y: way.y / zoom,
});

/** A photo point as it is stored: hundredths of a pixel are finer than any hand. */
export const roundPoint = ({ x, y }: Point<"photo">): Point<"photo"> => ({ x: roundPx(x), y: roundPx(y) });
/** Hundredths, and never -0. */
export const roundPx = (value: number): number => Math.round(value * 100) / 100 + 0;

/** Photo pixels under one CSS pixel to three digits: the grain a point set now is stored with. */
export const grainOf = (unitPx: number): number => Number(unitPx.toPrecision(3));

/** The photo point under a place in the box, ready to be stored, with the grain it was seen with. */
export const pickPoint = (view: View, screen: Point<"view">): PhotoPoint => ({
  ...roundPoint(toPhoto(view, screen)),
  grainPx: grainOf(1 / view.zoom),
});

/** The whole photo in the middle of the box. A box without size shows it one to one. */
export function fitView(photo: Size, box: Size): View {
  const room = Math.min(
    (box.width - 2 * FIT_MARGIN) / photo.width,
    (box.height - 2 * FIT_MARGIN) / photo.height,
  );
  const zoom = room > 0 ? Math.min(room, MOST_ZOOM) : 1;
  const pan = { x: (box.width - photo.width * zoom) / 2, y: (box.height - photo.height * zoom) / 2 };
  return { zoom, pan };
}

/** Holds the photo so that it cannot be lost: none of its edges crosses the middle of the box. */
export function keepInSight(view: View, photo: Size, box: Size): View {
  const hold = (pan: number, size: number, room: number): number =>
    Math.min(room / 2, Math.max(room / 2 - size * view.zoom, pan));
  return {
    zoom: view.zoom,
    pan: { x: hold(view.pan.x, photo.width, box.width), y: hold(view.pan.y, photo.height, box.height) },
  };
}

/** Zoomed by a factor; the photo point under `at` (CSS pixels in the box) stays under it. */
export function zoomAt(view: View, at: Point<"view">, factor: number, leastZoom: number): View {
  const zoom = Math.min(MOST_ZOOM, Math.max(leastZoom, view.zoom * factor));
  const under = toPhoto(view, at);
  return { zoom, pan: { x: at.x - under.x * zoom, y: at.y - under.y * zoom } };
}

/** Moved just so far that the point is at least `margin` CSS pixels inside the box; the same object if it is. */
export function reveal(view: View, photo: Point<"photo">, box: Size, margin: number): View {
  const at = toScreen(view, photo);
  const shift = (value: number, room: number): number =>
    value < margin ? margin - value : value > room - margin ? room - margin - value : 0;
  const by = { x: shift(at.x, box.width), y: shift(at.y, box.height) };
  return by.x === 0 && by.y === 0 ? view : { zoom: view.zoom, pan: add(view.pan, by) };
}
