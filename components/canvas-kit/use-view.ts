"use client";

import { useCallback, useLayoutEffect, useMemo, useState } from "react";
import { flushSync } from "react-dom";
import { add, type Point } from "@/lib/geometry";
import { liveView, type Clock, type LiveView } from "./live-view";
import { fitView, keepInSight, reveal, zoomAt, type Size, type View } from "./view";

export interface ViewControl {
  /** In which everything is painted: where the hand rested last. */
  readonly view: View;
  /** Where the photo lies at this moment, and who wants to hear of it. */
  readonly live: Pick<LiveView, "now" | "follow" | "hold">;
  /** By a hand in motion: painted anew when it rests. */
  readonly hand: Pick<ViewControl, "zoomBy" | "panBy">;
  /** The screen catches up with the hand now, before something else is done. */
  readonly rest: () => void;
  readonly zoomBy: (factor: number, at?: Point<"view">) => void;
  readonly panBy: (by: Point<"view">) => void;
  readonly fit: () => void;
  /** Back to a view that was; one that showed the whole photo goes on following its box. */
  readonly look: (view: View) => void;
  /** Brings a photo point into the box. */
  readonly show: (photo: Point<"photo">) => void;
}

/** Latest moment even when the browser stays busy, ms. */
const LATEST_MS = 400;

function whenIdle(run: () => void): () => void {
  if (typeof requestIdleCallback !== "function") {
    run();
    return () => undefined;
  }
  const id = requestIdleCallback(run, { timeout: LATEST_MS });
  return () => cancelIdleCallback(id);
}

const clock: Clock = {
  now: () => performance.now(),
  // When nothing else waits: a hand that goes on after all comes first.
  after: (ms, run) => {
    let callOff = (): void => undefined;
    const timer = setTimeout(() => {
      callOff = whenIdle(run);
    }, ms);
    return () => {
      clearTimeout(timer);
      callOff();
    };
  },
};

/** Pan and zoom. Until the person moves it, the photo stays fitted to the box however the box changes. */
export function useView(photo: Size, box: Size): ViewControl {
  const [moved, setMoved] = useState<View | null>(null);
  const [live] = useState(() => liveView(setMoved, clock));
  const { width, height } = photo;
  const { width: boxWidth, height: boxHeight } = box;
  useLayoutEffect(
    () => live.lay({ width, height }, { width: boxWidth, height: boxHeight }),
    [live, width, height, boxWidth, boxHeight],
  );
  const steps = useMemo(() => handSteps(live), [live]);
  const atOnce = useMemo(() => {
    const after =
      <A extends unknown[]>(step: (...given: A) => void) =>
      (...given: A): void => {
        step(...given);
        live.rest();
      };
    return { zoomBy: after(steps.zoomBy), panBy: after(steps.panBy), show: after(steps.show) };
  }, [live, steps]);
  return {
    view: useSettled(moved, width, height, boxWidth, boxHeight),
    live,
    hand: steps,
    ...atOnce,
    // Within an event, so that what it does next is done on the screen that is seen.
    rest: useCallback(() => flushSync(() => void live.rest()), [live]),
    fit: useCallback(() => live.put(null), [live]),
    look: useCallback(
      (view) => {
        const fitted = fitView({ width, height }, { width: boxWidth, height: boxHeight });
        const isFitted =
          view.zoom === fitted.zoom && view.pan.x === fitted.pan.x && view.pan.y === fitted.pan.y;
        live.put(isFitted ? null : view);
      },
      [live, width, height, boxWidth, boxHeight],
    ),
  };
}

const handSteps = ({ move }: LiveView): Pick<ViewControl, "zoomBy" | "panBy" | "show"> => ({
  zoomBy: (factor, at) =>
    move((view, fitted, room) =>
      zoomAt(view, at ?? { x: room.width / 2, y: room.height / 2 }, factor, fitted.zoom / 2),
    ),
  panBy: (by) => move((view) => ({ ...view, pan: add(view.pan, by) })),
  show: (point) => move((view, _, room) => reveal(view, point, room, 40)),
});

/** The same object while it is the same: what is painted by it is kept. Sizes of photo and box. */
function useSettled(
  moved: View | null,
  width: number,
  height: number,
  boxWidth: number,
  boxHeight: number,
): View {
  return useMemo(() => {
    const [photo, box] = [
      { width, height },
      { width: boxWidth, height: boxHeight },
    ];
    return moved === null ? fitView(photo, box) : keepInSight(moved, photo, box);
  }, [moved, width, height, boxWidth, boxHeight]);
}
