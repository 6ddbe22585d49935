"use client";

import { useMemo, useRef, useState } from "react";
import { palette } from "@/components/canvas/palette";
import { crossPicture } from "@/components/canvas/draft-picture";
import { Loupe } from "@/components/canvas/loupe";
import { newMarkId } from "@/components/canvas/new-mark-id";
import { CanvasStage } from "@/components/canvas/stage";
import { useBox } from "@/components/canvas/use-box";
import { usePhoto } from "@/components/canvas/use-photo";
import { usePointers } from "@/components/canvas/use-pointers";
import { useView } from "@/components/canvas/use-view";
import { ZoomButtons } from "@/components/canvas/zoom-buttons";
import { editLayer, itemAt, itemPrimitives, layerPrimitives, type LayerPoint } from "@/lib/course";
import { fitLabels, primitives, scene, type Drawing } from "@/lib/marks";
import { imperfections } from "@/lib/trade";
import type { LayerCanvasProps } from "./layer-canvas-props";
import { draftItem } from "./layer-draft";
import styles from "./layer-canvas.module.css";
import { layerInk } from "./layer-ink";
import { useLayerKeys } from "./use-layer-keys";

/** The student's photo under the instructor's hand: one finger draws, two pinch, every step can be undone. */
export default function LayerCanvas(props: LayerCanvasProps) {
  const { photo, drawing, history, onAction, tool, selectedId, onSelect, onTextAt } = props;
  const boxRef = useRef<HTMLDivElement>(null);
  const box = useBox(boxRef);
  const control = useView({ width: photo.widthPx, height: photo.heightPx }, box);
  const { levels, state } = usePhoto(photo);
  /** Points given so far by taps or keys, for the shape in hand. */
  const [placed, setPlaced] = useState<readonly LayerPoint[]>([]);
  const [dragged, setDragged] = useState<readonly LayerPoint[]>([]);
  const [held, setHeld] = useState<{ readonly id: string; readonly dx: number; readonly dy: number } | null>(
    null,
  );
  const [drawnWith, setDrawnWith] = useState(tool);
  if (drawnWith !== tool) {
    setDrawnWith(tool);
    setPlaced([]);
  }
  const unitPx = 1 / control.view.zoom;
  const items = history.present;

  const commit = (points: readonly LayerPoint[]) => {
    if (tool === "move" || tool === "text") return;
    const item = draftItem(tool, newMarkId(), points, 1.5 * unitPx);
    setPlaced([]);
    setDragged([]);
    if (!item) return;
    onAction({ type: "add", item });
    onSelect(item.id);
  };
  /** A tap or Enter: an arrow is done with its second point, a path grows until it is ended. */
  const place = (at: LayerPoint) => {
    if (tool === "move") return onSelect(itemAt(items, at, 14 * unitPx, unitPx)?.id ?? null);
    if (tool === "text") return onTextAt(at);
    const points = [...placed, at];
    if (tool === "arrow" && points.length === 2) commit(points);
    else setPlaced(points);
  };
  const cancel = () => {
    setPlaced([]);
    setDragged([]);
    setHeld(null);
  };
  const keys = useLayerKeys(props, control, box, { place, end: () => commit(placed), cancel });

  const { loupe, listeners } = usePointers(boxRef, control, {
    grip: (at, reach) => {
      keys.hideCross();
      if (tool !== "move") return { kind: "stretch" };
      const under = itemAt(items, at, reach * unitPx, unitPx);
      // Only what was picked first is moved: a pan that begins on an item stays a pan.
      return under && under.id === selectedId ? { kind: "stretch" } : { kind: "pan" };
    },
    onDrag: (_, { from, to, trail }) => {
      if (tool === "move" && selectedId) setHeld({ id: selectedId, dx: to.x - from.x, dy: to.y - from.y });
      else if (tool === "arrow") setDragged([from, to]);
      else if (tool !== "text") setDragged([...trail]);
    },
    onRelease: (grip, { from, to, trail }) => {
      if (grip.kind === "pan") return;
      if (tool === "move") {
        if (held) onAction({ type: "move", id: held.id, dx: held.dx, dy: held.dy });
        return setHeld(null);
      }
      if (tool === "text") return onTextAt(to);
      commit(tool === "arrow" ? [from, to] : trail);
    },
    onTap: (_, at) => {
      setDragged([]);
      place(at);
    },
    onGiveUp: () => {
      setDragged([]);
      setHeld(null);
    },
    onHover: () => undefined,
    zoomsOnDoubleTap: tool === "move",
  });

  const under = useMemo(() => {
    const labels = (mark: Drawing["marks"][number]) => imperfections[mark.imperfection].name;
    const size = { widthPx: photo.widthPx, heightPx: photo.heightPx };
    const shapes = fitLabels(scene(drawing, { labels, widthPx: size.widthPx }), unitPx, null, size);
    return shapes.flatMap((shape) => primitives(shape, palette, unitPx));
  }, [drawing, photo.widthPx, photo.heightPx, unitPx]);
  const shown = held ? editLayer(history, { type: "move", ...held }).present : items;
  const marks = [...under, ...layerPrimitives(shown, layerInk, unitPx, selectedId)];
  const inHand = dragged.length > 0 ? dragged : placed;
  const draft = tool === "move" || tool === "text" ? null : draftItem(tool, "draft", inHand, unitPx);
  const drafted = [
    ...(draft ? itemPrimitives(draft, layerInk, unitPx) : inHand.map((at) => dot(at, unitPx))),
    ...(keys.cross ? crossPicture(keys.cross, unitPx) : []),
  ];
  return (
    <div className={styles.board}>
      <div
        ref={boxRef}
        className={styles.photo}
        role="application"
        tabIndex={0}
        aria-label={photo.name ?? "The student’s photo"}
        aria-roledescription="drawing board"
        aria-describedby="layer-keys"
        data-testid="layer-canvas"
        data-tool={tool}
        data-items={items.length}
        data-zoom={control.view.zoom}
        data-pan-x={control.view.pan.x}
        data-pan-y={control.view.pan.y}
        data-photo-state={state}
        onKeyDown={keys.onKeyDown}
        {...listeners}
      >
        {box.width > 0 && (
          <CanvasStage
            box={box}
            view={control.view}
            photo={photo}
            levels={levels}
            marks={marks}
            draft={drafted}
          />
        )}
      </div>
      <p id="layer-keys" className="visually-hidden">
        Arrow keys move a cross, Enter sets a point, E ends a path, Escape gives up. M, A, T, F and O choose
        the tool. N picks the next thing drawn, Delete removes it, Ctrl and Z undoes.
      </p>
      {state === "failed" && (
        <p className={styles.failed} role="alert">
          The photo did not load. Check the connection, then reload the page; what you drew is kept.
        </p>
      )}
      <ZoomButtons onZoom={control.zoomBy} onFit={control.fit} />
      {placed.length > 0 && tool !== "arrow" && (
        <div className={styles.ending}>
          <button type="button" onClick={() => commit(placed)}>
            End here
          </button>
          <button type="button" onClick={cancel}>
            Give up
          </button>
        </div>
      )}
      {loupe && (
        <Loupe
          place={loupe}
          box={box}
          zoom={control.view.zoom}
          photo={photo}
          picture={levels[0] ?? null}
          paintings={[marks, drafted]}
        />
      )}
    </div>
  );
}

const dot = (at: LayerPoint, unitPx: number) =>
  ({
    kind: "circle",
    at,
    radius: 5 * unitPx,
    stroke: layerInk.line,
    width: 4 * unitPx,
    dash: [],
  }) as const;
