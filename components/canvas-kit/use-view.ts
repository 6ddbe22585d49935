"use client";

import { useCallback, useState } from "react";
import { add, type Point } from "@/lib/geometry";
import { fitView, keepInSight, reveal, zoomAt, type Size, type View } from "./view";

export interface ViewControl {
  readonly view: View;
  readonly zoomBy: (factor: number, at?: Point<"view">) => void;
  readonly panBy: (by: Point<"view">) => void;
  readonly fit: () => void;
  /** Back to a view that was; one that showed the whole photo goes on following its box. */
  readonly look: (view: View) => void;
  /** Brings a photo point into the box. */
  readonly show: (photo: Point<"photo">) => void;
}

/** Pan and zoom. Until the person moves it, the photo stays fitted to the box however the box changes. */
export function useView(photo: Size, box: Size): ViewControl {
  const [moved, setMoved] = useState<View | null>(null);
  const { width, height } = photo;
  const { width: boxWidth, height: boxHeight } = box;
  const change = useCallback(
    (step: (view: View, fitted: View, box: Size) => View) => {
      const room = { width: boxWidth, height: boxHeight };
      const size = { width, height };
      const fitted = fitView(size, room);
      setMoved((old) => keepInSight(step(old ?? fitted, fitted, room), size, room));
    },
    [width, height, boxWidth, boxHeight],
  );
  return {
    view: moved === null ? fitView(photo, box) : keepInSight(moved, photo, box),
    zoomBy: useCallback(
      (factor, at) =>
        change((view, fitted, room) =>
          zoomAt(view, at ?? { x: room.width / 2, y: room.height / 2 }, factor, fitted.zoom / 2),
        ),
      [change],
    ),
    panBy: useCallback((by) => change((view) => ({ ...view, pan: add(view.pan, by) })), [change]),
    fit: useCallback(() => setMoved(null), []),
    look: useCallback(
      (view) => {
        const fitted = fitView({ width, height }, { width: boxWidth, height: boxHeight });
        const isFitted =
          view.zoom === fitted.zoom && view.pan.x === fitted.pan.x && view.pan.y === fitted.pan.y;
        setMoved(isFitted ? null : view);
      },
      [width, height, boxWidth, boxHeight],
    ),
    show: useCallback((point) => change((view, _, room) => reveal(view, point, room, 40)), [change]),
  };
}
