"use client";
import { useMemo, useRef, type KeyboardEvent } from "react";
import { fitLabels, primitives, scene } from "@/lib/marks";
import styles from "./bead-canvas.module.css";
import { DraftBar } from "./draft-bar";
import { crossPicture, draftPicture, handlePicture, selectionPicture } from "./draft-picture";
import { dragDraft, gripAt, release, tap, type Scenery } from "./gesture";
import { handlesOf } from "./handles";
import { markAt } from "./hit";
import { ImperfectionPicker } from "./imperfection-picker";
import { Loupe } from "./loupe";
import { palette } from "./palette";
import { shapeOfDraft, shapesInHand } from "./preview";
import { CanvasStage } from "./stage";
import type { BeadCanvasProps } from "./types";
import { useBox } from "./use-box";
import { useKeys } from "./use-keys";
import { useMarking } from "./use-marking";
import { usePhoto } from "./use-photo";
import { usePointers } from "./use-pointers";
import { useView } from "./use-view";
import { keyHelp } from "./words";
import { ZoomButtons } from "./zoom-buttons";

/** The photo with its marks: everything a hand, a mouse or a keyboard does to it becomes one action per gesture. */
export default function BeadCanvas(props: BeadCanvasProps) {
  const { photo, history, selectedId, sizeLabel, scaleLabel, readOnly = false } = props;
  const boxRef = useRef<HTMLDivElement>(null);
  const box = useBox(boxRef);
  const control = useView({ width: photo.widthPx, height: photo.heightPx }, box);
  const { levels, state } = usePhoto(photo);
  const marking = useMarking(props);
  const { tool, draft, preview } = marking;
  const { view } = control;
  const unitPx = 1 / view.zoom;
  const drawing = history.present;

  const options = useMemo(
    () => ({ labels: sizeLabel, scaleLabel, widthPx: photo.widthPx }),
    [sizeLabel, scaleLabel, photo.widthPx],
  );
  const shapes = useMemo(() => scene(drawing, options), [drawing, options]);
  const held = shapesInHand(draft);
  const handles = readOnly ? [] : handlesOf(preview, tool, selectedId, unitPx);
  const scenery: Scenery = { tool, draft, drawing, shapes, handles, selectedId, unitPx };

  const marks = useMemo(() => {
    const shown = fitLabels(shapes, unitPx, selectedId).filter((shape) => !held(shape));
    return [
      ...selectionPicture(shown, selectedId, unitPx),
      ...shown.flatMap((shape) => primitives(shape, palette, unitPx)),
    ];
  }, [shapes, unitPx, selectedId, held]);

  const keys = useKeys(marking, scenery, control, box, readOnly);
  const inHand = draft?.kind === "change" ? scene(preview, options).filter(held) : [];
  const drafted = [
    ...inHand.flatMap((shape) => primitives(shape, palette, unitPx)),
    ...draftPicture(draft, unitPx),
    ...handlePicture(handles, null, unitPx),
    ...(keys.cross ? crossPicture(keys.cross, unitPx) : []),
  ];

  const draftAtPress = useRef(draft);
  const reach = (css: number) => ({
    again: css * unitPx,
    tolerance: 2.5 * unitPx,
    scaleKind: marking.scaleKind,
  });
  const { loupe, listeners } = usePointers(boxRef, control, {
    grip: (at, css) => {
      keys.hideCross();
      draftAtPress.current = draft;
      return gripAt(scenery, at, css);
    },
    onDrag: (grip, drag) => marking.setDraft(dragDraft(grip, draftAtPress.current, { ...drag, tool })),
    onRelease: (grip, drag, css) =>
      marking.settle(release(grip, draftAtPress.current, { ...drag, tool }, reach(css))),
    onTap: (grip, at, css) => {
      if (tool === "move") marking.select(markAt(drawing, shapes, at, css, unitPx));
      else marking.settle(tap(grip, draftAtPress.current, tool, at, reach(css)));
    },
    onGiveUp: () => marking.setDraft(draftAtPress.current),
    onHover: marking.hover,
    zoomsOnDoubleTap: tool === "move",
  });

  const onBoardKey = (event: KeyboardEvent) => {
    if (readOnly || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== "z") return;
    event.preventDefault();
    if (event.shiftKey) marking.redo();
    else marking.undo();
  };

  return (
    <div className={styles.board} onKeyDown={onBoardKey}>
      <div className={styles.window}>
        <div
          ref={boxRef}
          className={styles.photo}
          role="application"
          tabIndex={0}
          aria-label={photo.name ?? "Photo of the bead"}
          aria-roledescription="marking canvas"
          aria-describedby="bead-canvas-keys"
          data-testid="bead-canvas"
          data-tool={tool}
          data-zoom={view.zoom}
          data-pan-x={view.pan.x}
          data-pan-y={view.pan.y}
          data-marks={drawing.marks.length}
          data-draft={draft?.kind ?? "none"}
          data-photo-state={state}
          onKeyDown={keys.onKeyDown}
          {...listeners}
        >
          {box.width > 0 && (
            <CanvasStage box={box} view={view} photo={photo} levels={levels} marks={marks} draft={drafted} />
          )}
        </div>
        <p id="bead-canvas-keys" className="visually-hidden">
          {keyHelp}
        </p>
        <p className="visually-hidden" role="status" aria-live="polite">
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
            place={loupe}
            box={box}
            zoom={view.zoom}
            photo={photo}
            picture={levels[0] ?? null}
            paintings={[marks, drafted]}
          />
        )}
        {!readOnly && (
          <DraftBar
            marking={marking}
            drawing={drawing}
            size={shapeOfDraft(draft, props.shapeLabel)}
            touching={loupe !== null}
          />
        )}
      </div>
      <ImperfectionPicker
        open={draft?.kind === "unnamed"}
        onOpenChange={(open) => {
          if (!open) marking.cancel();
        }}
        current={null}
        onPick={marking.nameShape}
        {...(props.suggested ? { suggested: props.suggested } : {})}
        {...(draft?.kind === "unnamed" ? { shape: draft.shape.kind } : {})}
        onRepeat={marking.setRepeat}
        onClosed={() => boxRef.current?.focus({ preventScroll: true })}
      />
    </div>
  );
}
