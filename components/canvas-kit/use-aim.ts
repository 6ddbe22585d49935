"use client";

import { useState } from "react";
import { add, type Point } from "@/lib/geometry";
import type { ViewControl } from "./use-view";
import { roundPoint, toPhoto, wayOnPhoto, type Size } from "./view";

export interface Aim {
  /** Where the cross-hair is, photo pixels; null while nobody uses the keyboard. */
  readonly shown: Point<"photo"> | null;
  /** Where a point would be set now: the middle of the view before the first arrow. */
  readonly at: () => Point<"photo">;
  /** The place so many CSS pixels beside it. */
  readonly beside: (by: Point<"view">) => Point<"photo">;
  readonly show: (at: Point<"photo">) => void;
  /** Shows it there and brings the place into the box. */
  readonly goTo: (at: Point<"photo">) => void;
  readonly hide: () => void;
}

/** The keyboard's finger: a cross-hair in photo pixels. */
export function useAim(control: ViewControl, box: Size): Aim {
  const [shown, setShown] = useState<Point<"photo"> | null>(null);
  const { view } = control;
  const at = (): Point<"photo"> =>
    shown ?? roundPoint(toPhoto(view, { x: box.width / 2, y: box.height / 2 }));
  return {
    shown,
    at,
    beside: (by) => roundPoint(add(at(), wayOnPhoto(view, by))),
    show: setShown,
    goTo: (to) => {
      setShown(to);
      control.show(to);
    },
    hide: () => setShown(null),
  };
}
