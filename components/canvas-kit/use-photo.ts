"use client";

import { useEffect, useState } from "react";
import type { CanvasPhoto } from "./canvas-photo";

export type Picture = HTMLImageElement | ImageBitmap;

export interface LoadedPhoto {
  /** The best picture there is by now, then its halves, large to small; empty until the first has arrived. */
  readonly levels: readonly Picture[];
  readonly state: "loading" | "small" | "sharp" | "failed";
}

/** No half smaller than this many pixels wide: it would be drawn in no time anyway. */
const SMALLEST_HALF = 700;

/** After a photo could not be loaded, before it is asked for again, ms: whoever has it may be away for a while. */
const AGAIN_MS = 10_000;

/** Loads and decodes; decoding ahead keeps the first frame with a large photo from stalling. */
async function fetchPicture(url: string): Promise<HTMLImageElement> {
  const picture = new Image();
  picture.src = url;
  await picture.decode();
  return picture;
}

/**
 * Halves of halves: drawing twelve megapixels into a phone's width on every frame of a pan would stutter. The whole picture as a
 * bitmap too: an image that was not painted for a while is decoded again, in the middle of a zoom.
 */
async function halve(picture: HTMLImageElement): Promise<readonly Picture[]> {
  const levels: Picture[] = [await bitmapOf(picture)];
  for (let width = picture.naturalWidth / 2; width >= SMALLEST_HALF; width /= 2) {
    const resizeWidth = Math.round(width);
    levels.push(await createImageBitmap(levels.at(-1)!, { resizeWidth, resizeQuality: "medium" }));
  }
  return levels;
}

/**
 * Of the bytes, which the browser decodes beside the page; an element it would decode once more on the page's own thread, in one
 * long task. Where bytes come out otherwise than the element (turned, or not at all) that has to do.
 */
async function bitmapOf(picture: HTMLImageElement): Promise<ImageBitmap> {
  const bitmap = await fetch(picture.src)
    .then(async (answer) => createImageBitmap(await answer.blob()))
    .catch(() => null);
  const isSame = bitmap?.width === picture.naturalWidth && bitmap.height === picture.naturalHeight;
  return bitmap && isSame ? bitmap : createImageBitmap(picture);
}

/** The smallest level that still has a pixel for each of the `width` device pixels it will cover. */
export function levelFor<P extends { readonly width: number }>(
  levels: readonly P[],
  width: number,
): P | null {
  return levels.findLast((level) => level.width >= width) ?? levels[0] ?? null;
}

/** The small picture first, the view picture as soon as it is decoded, then its halves; again and again until it came. */
export function usePhoto({ smallUrl, viewUrl }: CanvasPhoto): LoadedPhoto {
  const [loaded, setLoaded] = useState<LoadedPhoto>({ levels: [], state: "loading" });
  const [tries, setTries] = useState(0);
  useEffect(() => {
    // Not known yet: it is being read from this device.
    if (viewUrl === "") return;
    let gone = false;
    let again: ReturnType<typeof setTimeout> | undefined;
    const update = (change: (old: LoadedPhoto) => LoadedPhoto) => {
      if (!gone) setLoaded(change);
    };
    if (smallUrl !== viewUrl)
      fetchPicture(smallUrl).then(
        (picture) => update((old) => (old.state === "sharp" ? old : { levels: [picture], state: "small" })),
        () => undefined, // the view picture may still come; its failure is the one that is told
      );
    const showView = async () => {
      const picture = await fetchPicture(viewUrl);
      update(() => ({ levels: [picture], state: "sharp" }));
      // Without halves it is only slower: an old browser or a phone short of memory keeps the whole picture.
      const levels = await halve(picture).catch(() => [picture]);
      update(() => ({ levels, state: "sharp" }));
    };
    showView().catch(() => {
      update((old) => ({ ...old, state: "failed" }));
      if (!gone) again = setTimeout(() => setTries(tries + 1), AGAIN_MS);
    });
    return () => {
      gone = true;
      clearTimeout(again);
    };
  }, [smallUrl, viewUrl, tries]);
  return loaded;
}
