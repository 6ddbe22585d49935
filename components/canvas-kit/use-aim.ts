"use client";

import { useState } from "react";
import { add, times, type Point } from "@/lib/geometry";
import type { ViewControl } from "./use-view";
import { roundPoint, toPhoto, type Size } from "./view";

export interface Aim {
  /** Where the cross-hair is, photo pixels; null while nobody uses the keyboard. */
  readonly shown: Point | null;
  /** Where a point would be set now: the middle of the view before the first arrow. */
  readonly at: () => Point;
  /** The place so many CSS pixels beside it. */
  readonly beside: (by: Point) => Point;
  readonly show: (at: Point) => void;
  /** Shows it there and brings the place into the box. */
  readonly goTo: (at: Point) => void;
  readonly hide: () => void;
}

/** The keyboard's finger: a cross-hair in photo pixels. */
export function useAim(control: ViewControl, box: Size): Aim {
  const [shown, setShown] = useState<Point | null>(null);
  const { view } = control;
  const at = (): Point => shown ?? roundPoint(toPhoto(view, { x: box.width / 2, y: box.height / 2 }));
  return {
    shown,
    at,
    beside: (by) => roundPoint(add(at(), times(by, 1 / view.zoom))),
    show: setShown,
    goTo: (to) => {
      setShown(to);
      control.show(to);
    },
    hide: () => setShown(null),
  };
}
