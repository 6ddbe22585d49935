"use client";

import { Image as PictureSign } from "lucide-react";
import { useEffect, useState } from "react";
import styles from "./early-picture.module.css";

/**
 * In the place of a photo that this browser cannot show: the small picture that a HEIC file carries, said to be one, else
 * a plate with the file's name. The code for it comes with the first such file.
 */
export function EarlyPicture({ file, name }: { file: Blob; name: string }) {
  const url = useEarlyUrl(file);
  return (
    <figure className={styles.figure} data-testid="early-picture" data-preview={url !== null}>
      {url === null ? (
        <div className={styles.plate}>
          <PictureSign aria-hidden="true" size={36} />
          <span>{name}</span>
        </div>
      ) : (
        <img src={url} alt={`Preview of ${name}`} />
      )}
      <figcaption>
        {url === null
          ? "This browser cannot show it. It is shown once the photo is taken in."
          : "Preview while the photo is taken in. Marks are set on the photo itself."}
      </figcaption>
    </figure>
  );
}

function useEarlyUrl(file: Blob): string | null {
  const [url, setUrl] = useState<string | null>(null);
  useEffect(() => {
    let made: string | null = null;
    let isGone = false;
    const show = (picture: Blob | null) => {
      if (picture === null || isGone) return;
      made = URL.createObjectURL(picture);
      setUrl(made);
    };
    import("./look-into-heic")
      .then(({ lookIntoHeic }) => lookIntoHeic(file))
      .then(show)
      .catch(() => undefined); // the plate stays
    return () => {
      isGone = true;
      if (made !== null) URL.revokeObjectURL(made);
      setUrl(null);
    };
  }, [file]);
  return url;
}
