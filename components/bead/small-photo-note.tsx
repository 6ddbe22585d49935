import { smallPhotoSentence } from "@/lib/report";
import styles from "./scale-panel.module.css";

/** Says of a photo that it shows less than one may think. */
export function SmallPhotoNote({
  photo,
}: {
  photo: { readonly widthPx: number; readonly heightPx: number };
}) {
  const said = smallPhotoSentence(photo);
  return said === null ? null : <p className={styles.note}>{said}</p>;
}
