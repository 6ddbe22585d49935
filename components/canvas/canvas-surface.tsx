import type { KeyboardEvent, ReactNode, RefObject } from "react";
import styles from "./bead-canvas.module.css";
import type { BeadCanvasProps } from "./types";
import type { Marking } from "./use-marking";
import type { LoadedPhoto } from "./use-photo";
import type { usePointers } from "./use-pointers";
import type { View } from "./view";

/** The one element that is touched, clicked and typed at. What it holds is told in data attributes, for tests. */
export function CanvasSurface({
  boxRef,
  props: { photo, history },
  marking,
  view,
  photoState,
  keysId,
  onKeyDown,
  listeners,
  children,
}: {
  boxRef: RefObject<HTMLDivElement | null>;
  props: BeadCanvasProps;
  marking: Marking;
  view: View;
  photoState: LoadedPhoto["state"];
  /** Of the element that explains the keys. */
  keysId: string;
  onKeyDown: (event: KeyboardEvent) => void;
  listeners: ReturnType<typeof usePointers>["listeners"];
  children: ReactNode;
}) {
  return (
    <div
      ref={boxRef}
      className={styles.photo}
      role="application"
      tabIndex={0}
      aria-label={photo.name ?? "Photo of the bead"}
      aria-roledescription="marking canvas"
      aria-describedby={keysId}
      data-testid="bead-canvas"
      data-tool={marking.tool}
      data-zoom={view.zoom}
      data-pan-x={view.pan.x}
      data-pan-y={view.pan.y}
      data-marks={history.present.marks.length}
      data-draft={marking.draft?.kind ?? "none"}
      data-photo-state={photoState}
      onKeyDown={onKeyDown}
      {...listeners}
    >
      {children}
    </div>
  );
}
