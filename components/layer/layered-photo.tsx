import { MarkOverlay, layerInk, svgElements } from "@/components/picture";
import { itemName, layerPrimitives, type LayerItem } from "@/lib/course";
import { fitLabels, scene, type Drawing } from "@/lib/marks";
import { imperfections } from "@/lib/trade";
import styles from "./layered-photo.module.css";

export interface LayeredPhotoProps {
  readonly src: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly drawing: Drawing;
  readonly items: readonly LayerItem[];
  readonly name: string;
}

/** Screen units across: lines and words come out readable on a phone and on paper. */
const ACROSS = 620;

/** A student's photo with their own marks and the instructor's layer above; works on the server and on paper. */
export function LayeredPhoto({ src, widthPx, heightPx, drawing, items, name }: LayeredPhotoProps) {
  const labels = (mark: Drawing["marks"][number]) => imperfections[mark.imperfection].name;
  const marks = fitLabels(scene(drawing, { labels, widthPx }), widthPx / ACROSS, null, { widthPx, heightPx });
  const said = items.map(itemName).join("; ");
  return (
    <figure className={styles.figure}>
      <div
        className={styles.frame}
        style={{ aspectRatio: `${widthPx} / ${heightPx}`, ["--ratio" as string]: widthPx / heightPx }}
      >
        <img src={src} alt={name} />
        <MarkOverlay scene={marks} widthPx={widthPx} heightPx={heightPx} acrossUnits={ACROSS} />
        <svg
          viewBox={`0 0 ${widthPx} ${heightPx}`}
          className={styles.layer}
          role="img"
          aria-label={said === "" ? "Nothing drawn by the instructor" : `Drawn by the instructor: ${said}`}
        >
          {svgElements(layerPrimitives(items, layerInk, widthPx / ACROSS))}
        </svg>
      </div>
      <figcaption>{name}</figcaption>
    </figure>
  );
}
