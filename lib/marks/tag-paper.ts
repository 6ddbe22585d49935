import { add } from "@/lib/geometry";
import { boxGrid } from "./box-grid";
import type { SceneBadge, SceneLabel } from "./scene-types";
import { isInside, shiftInto, tagBox, type Box } from "./tag-box";

/** Screen units that numbers and words keep from the photo's edge. */
const MARGIN = 2;

/** Size of the photo, pixels. */
export interface PhotoSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

type Tag = SceneBadge | SceneLabel;

/** A photo being covered with numbers and words, one after the other. Places come best first. */
export interface Paper {
  /**
   * Takes the first place that is inside and free; else the first that is free once it is moved inside; else null, and
   * nothing is taken.
   */
  readonly put: <T extends Tag>(places: Iterable<T>) => T | null;
  /** Takes a place moved inside, whatever is in the way. */
  readonly force: <T extends Tag>(place: T) => T;
}

/**
 * Nothing on it yet but what must stay `inSight`, screen units. `unitPx`: photo pixels per screen unit; a photo of
 * unknown size has no edge.
 */
export function startPaper(unitPx: number, photo: PhotoSize | null, inSight: readonly Box[]): Paper {
  const taken = boxGrid(inSight);
  const room: Box | null = photo && {
    left: MARGIN,
    top: MARGIN,
    right: photo.widthPx / unitPx - MARGIN,
    bottom: photo.heightPx / unitPx - MARGIN,
  };
  const moved = <T extends Tag>(tag: T): T =>
    room === null ? tag : { ...tag, offset: add(tag.offset, shiftInto(tagBox(tag, unitPx), room)) };
  const take = <T extends Tag>(tag: T): T => {
    taken.add(tagBox(tag, unitPx));
    return tag;
  };
  return {
    put: <T extends Tag>(places: Iterable<T>): T | null => {
      const outside: T[] = [];
      for (const tag of places) {
        const box = tagBox(tag, unitPx);
        if (room !== null && !isInside(box, room)) outside.push(tag);
        else if (taken.isFree(box)) return take(tag);
      }
      const found = outside.map(moved).find((tag) => taken.isFree(tagBox(tag, unitPx)));
      return found ? take(found) : null;
    },
    force: (place) => take(moved(place)),
  };
}
