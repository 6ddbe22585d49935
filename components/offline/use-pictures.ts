"use client";

import { useCallback, useEffect, useRef, useState } from "react";
import type { KeptPhoto } from "./kept";
import { readLocalPicture, type LocalPicture } from "./measure-photo";

export interface Pictures {
  /** Address of what this device can show of a photo; null: nothing, or not read yet. */
  readonly urlOf: (photoId: string) => string | null;
  readonly add: (photoId: string, picture: LocalPicture) => void;
}

/**
 * Pictures of photos that wait on this device. One stays in use until the screen is left, although the photo was sent
 * meanwhile: what is under the hand must not blink.
 */
export function usePictures(photos: readonly KeptPhoto[]): Pictures {
  const [urls, setUrls] = useState<ReadonlyMap<string, string>>(new Map());
  const made = useRef<Map<string, string>>(new Map());
  const add = useCallback((id: string, { view }: Pick<LocalPicture, "view">) => {
    if (made.current.has(id)) return;
    made.current.set(id, URL.createObjectURL(view));
    setUrls(new Map(made.current));
  }, []);
  useEffect(() => {
    for (const { id, file, size } of photos)
      if (size && !made.current.has(id))
        void readLocalPicture(file).then((picture) => picture && add(id, picture));
  }, [photos, add]);
  useEffect(() => {
    const all = made.current;
    return () => {
      for (const url of all.values()) URL.revokeObjectURL(url);
      all.clear();
    };
  }, []);
  return { urlOf: (id) => urls.get(id) ?? null, add };
}
