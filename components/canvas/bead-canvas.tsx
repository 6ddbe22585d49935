"use client";
import { useId, useRef, type KeyboardEvent, type ReactNode } from "react";
import styles from "./bead-canvas.module.css";
import { CanvasSurface } from "./canvas-surface";
import { DraftBar } from "./draft-bar";
import { crossPicture, draftPicture, handlePicture } from "./draft-picture";
import type { Scenery } from "./gesture";
import { handlesOf } from "./handles";
import { Loupe } from "./loupe";
import { loupeCentre, shapeOfDraft } from "./preview";
import { toolsMissing } from "./tools-missing";
import { ShapeNamer } from "./shape-namer";
import { CanvasStage } from "./stage";
import { ToolBar } from "./tool-bar";
import type { BeadCanvasProps } from "./types";
import { useBox } from "./use-box";
import { useHands } from "./use-hands";
import { useKeys } from "./use-keys";
import { useMarking, type Marking } from "./use-marking";
import { usePhoto } from "./use-photo";
import { usePickedPoint } from "./use-picked-point";
import { useScene } from "./use-scene";
import { useView } from "./use-view";
import { keyHelp } from "./words";
import { ZoomButtons } from "./zoom-buttons";

/** The photo with its marks: everything a hand, a mouse or a keyboard does to it becomes one action per gesture. */
export default function BeadCanvas(props: BeadCanvasProps) {
  const { photo, history, selectedId, readOnly = false } = props;
  const boxRef = useRef<HTMLDivElement>(null);
  const keysId = useId();
  const box = useBox(boxRef);
  const control = useView({ width: photo.widthPx, height: photo.heightPx }, box);
  const { levels, state } = usePhoto(photo);
  const marking = useMarking(props);
  const { tool, draft, preview } = marking;
  const { view } = control;
  const unitPx = 1 / view.zoom;
  const { shapes, marks, inHand } = useScene(props, marking, unitPx);
  const handles = readOnly
    ? []
    : handlesOf(preview, tool, selectedId, unitPx, photo.widthPx, sectionInHand(props, marking));
  const picked = usePickedPoint(handles, marking);
  const scenery: Scenery = { tool, draft, drawing: history.present, shapes, handles, selectedId, unitPx };
  const keys = useKeys({ marking, scenery, picked, control, readOnly }, box);
  const { loupe, listeners } = useHands(boxRef, control, marking, scenery, picked, keys.hideCross);
  const drafted = [
    ...inHand,
    ...draftPicture(draft, unitPx),
    ...handlePicture(handles, picked.handle?.key ?? null, unitPx),
    ...(keys.cross ? crossPicture(keys.cross, unitPx) : []),
  ];
  return (
    <Board props={props} marking={marking}>
      <CanvasSurface
        {...{ boxRef, props, marking, view, keysId, listeners }}
        photoState={state}
        onKeyDown={keys.onKeyDown}
      >
        {box.width > 0 && <CanvasStage {...{ box, view, photo, levels, marks }} draft={drafted} />}
      </CanvasSurface>
      <p id={keysId} className="visually-hidden">
        {keyHelp(marking.offered)}
      </p>
      <p className="visually-hidden" role="status" aria-live="polite" data-testid="canvas-said">
        {marking.said}
      </p>
      {state === "failed" && (
        <p className={styles.failed} role="alert">
          The photo did not load. Check the connection, then open this bead again; your marks are kept.
        </p>
      )}
      <ZoomButtons onZoom={control.zoomBy} onFit={control.fit} />
      {loupe && (
        <Loupe
          place={{ ...loupe, photo: loupeCentre(loupe.photo, draft) }}
          {...{ box, photo }}
          zoom={view.zoom}
          picture={levels[0] ?? null}
          paintings={[marks, drafted]}
        />
      )}
      {!readOnly && (
        <DraftBar
          {...{ marking, picked }}
          drawing={history.present}
          size={shapeOfDraft(draft, props.shapeLabel)}
          touching={loupe !== null}
        />
      )}
      <ShapeNamer
        marking={marking}
        suggested={props.suggested}
        onClosed={() => boxRef.current?.focus({ preventScroll: true })}
      />
    </Board>
  );
}

/** The section with the drag under way, so that what the hand holds moves with it. */
function sectionInHand({ section }: BeadCanvasProps, { sectionPreview }: Marking) {
  return section && sectionPreview ? { section: sectionPreview, places: section.places } : null;
}

/** Tools and canvas side by side; undo and redo answer to the keys in both. */
function Board({
  props,
  marking,
  children,
}: {
  props: BeadCanvasProps;
  marking: Marking;
  children: ReactNode;
}) {
  const { history, readOnly = false } = props;
  const { past, present, future } = history;
  const onKeyDown = (event: KeyboardEvent) => {
    if (readOnly || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z") return;
    event.preventDefault();
    if (event.shiftKey) marking.redo();
    else marking.undo();
  };
  return (
    <div className={styles.board} onKeyDown={onKeyDown}>
      {!readOnly && (
        <ToolBar
          tool={marking.tool}
          onToolChange={marking.changeTool}
          canUndo={past.length > 0 || marking.draft?.kind === "path"}
          canRedo={future.length > 0}
          onUndo={marking.undo}
          onRedo={marking.redo}
          offered={marking.offered}
          missing={toolsMissing(present, props.section?.section ?? null)}
        />
      )}
      <div className={styles.window}>{children}</div>
    </div>
  );
}
