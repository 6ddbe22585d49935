import { useEffect, useState } from "react";
import type { CanvasPhoto } from "./types";

export interface LoadedPhoto {
  /** The best picture there is by now; null until the first has arrived. */
  readonly picture: HTMLImageElement | null;
  readonly state: "loading" | "small" | "sharp" | "failed";
}

/** Loads and decodes; decoding ahead keeps the first frame with a large photo from stalling. */
async function fetchPicture(url: string): Promise<HTMLImageElement> {
  const picture = new Image();
  picture.src = url;
  await picture.decode();
  return picture;
}

/** The small picture first, the view picture as soon as it is decoded. */
export function usePhoto({ smallUrl, viewUrl }: CanvasPhoto): LoadedPhoto {
  const [loaded, setLoaded] = useState<LoadedPhoto>({ picture: null, state: "loading" });
  useEffect(() => {
    let gone = false;
    const show = (picture: HTMLImageElement, state: "small" | "sharp") => {
      if (!gone) setLoaded((old) => (old.state === "sharp" ? old : { picture, state }));
    };
    fetchPicture(smallUrl).then(
      (picture) => show(picture, "small"),
      () => undefined, // the view picture may still come; its failure is the one that is told
    );
    fetchPicture(viewUrl).then(
      (picture) => show(picture, "sharp"),
      () => !gone && setLoaded((old) => ({ ...old, state: "failed" })),
    );
    return () => {
      gone = true;
    };
  }, [smallUrl, viewUrl]);
  return loaded;
}
