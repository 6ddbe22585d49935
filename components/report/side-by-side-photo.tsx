import { MarkOverlay } from "@/components/picture";
import { VIEW_WIDTH, type AlignedPhoto, type LaidPhoto } from "@/lib/assess";
import { fitLabels, scene, warpDrawing, type SceneShape } from "@/lib/marks";
import type { SheetDocument } from "@/lib/report";
import type { LaidParts } from "./compare-pictures";
import { laidStyle, laidTransform } from "./laid-transform";
import styles from "./side-by-side.module.css";

/** Screen units across the view: numbers at the marks stay readable on a phone held upright. */
const ACROSS = 480;

type SheetPhoto = SheetDocument["photos"][number];

/** A letter's mean width in screen units at the size labels are set. */
const LETTER = 8.4;

/** Words that the picture's edge would cut are left to the tables: half a size is worse than none. */
function isWhole(shape: SceneShape): boolean {
  if (shape.kind !== "label") return true;
  const at = (shape.at.x * ACROSS) / VIEW_WIDTH + shape.offset.x;
  const width = shape.text.length * LETTER;
  const left = shape.side === "right" ? at : shape.side === "left" ? at - width : at - width / 2;
  return left >= 0 && left + width <= ACROSS;
}

/** A photo laid along its weld: its picture, small or fine, and its marks turned along with their numbers upright. */
export function laidParts(photo: SheetPhoto, laid: LaidPhoto, alt: string): LaidParts {
  const { toView, heightUnits } = laid;
  const { drawing, labels, widthPx, sha256 } = photo;
  const shapes = scene(warpDrawing(drawing, toView), {
    labels: (mark) => labels[mark.id] ?? "",
    widthPx: VIEW_WIDTH,
  });
  const style = laidStyle(laidTransform(toView, widthPx, heightUnits));
  return {
    small: <img src={`/api/photos/${sha256}/small`} alt={alt} draggable={false} style={style} />,
    fine: <img src={`/api/photos/${sha256}/view`} alt="" draggable={false} style={style} />,
    marks: (
      <MarkOverlay
        scene={fitLabels(shapes, VIEW_WIDTH / ACROSS, null).filter(isWhole)}
        widthPx={VIEW_WIDTH}
        heightPx={heightUnits}
        acrossUnits={ACROSS}
      />
    ),
    height: heightUnits / VIEW_WIDTH,
  };
}

/** The same as one picture, as it is looked at without being zoomed. */
export function LaidPicture({ photo, laid, alt }: { photo: SheetPhoto; laid: LaidPhoto; alt: string }) {
  const { small, marks } = laidParts(photo, laid, alt);
  return (
    <div className={styles.photo} style={{ aspectRatio: `${VIEW_WIDTH} / ${laid.heightUnits}` }}>
      {small}
      {marks}
    </div>
  );
}

/** What was done to the picture, and how far that goes. */
export function alignedWords(aligned: AlignedPhoto, hasScale: boolean): string {
  switch (aligned.kind) {
    case "as-taken":
      return "As taken: no weld line is marked on it to turn it by.";
    case "turned":
      return hasScale
        ? "Turned along its weld, not to scale: its scale does not hold there. Mark the scale again."
        : "Turned along its weld, not to scale: no scale is set on it.";
    case "to-scale":
      return aligned.isFlat
        ? `Turned along its weld and laid flat${tiltWords(aligned.tiltDeg)}. The ruler holds in the plane of the scale; what stands off that plane is stretched.`
        : "Turned along its weld. Its scale is two points, which do not show a tilt of the camera: the ruler holds near the scale, less so away from it.";
  }
}

const tiltWords = (tiltDeg: number | null): string =>
  tiltDeg === null || tiltDeg < 1 ? "" : `, a tilt of about ${Math.round(tiltDeg)}° taken out`;
