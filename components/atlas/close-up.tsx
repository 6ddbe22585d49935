import type { CloseUpPicture } from "@/lib/atlas";
import styles from "./close-up.module.css";

/** A rendered close-up at its own shape; `eager` for what is seen first. */
export function CloseUp({ picture, eager = false }: { picture: CloseUpPicture; eager?: boolean }) {
  const { src, alt, widthPx, heightPx } = picture;
  return (
    // The file is small and of its final size: there is nothing to make of it on the way.
    <img
      className={styles.picture}
      {...{ src, alt }}
      width={widthPx}
      height={heightPx}
      loading={eager ? "eager" : "lazy"}
      decoding="async"
    />
  );
}
