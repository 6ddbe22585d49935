import { useState } from "react";
import { add, times, type Point } from "@/lib/geometry";
import type { PhotoPoint } from "@/lib/marks";
import type { Handle } from "./handles";
import type { Marking } from "./use-marking";
import type { ViewControl } from "./use-view";
import { grainOf, pickPoint, roundPoint, type Size } from "./view";

export interface Cross {
  /** Where it is, photo pixels; null while nobody uses the keyboard. */
  readonly shown: Point | null;
  /** Shows it and says where a point would be placed now: the middle of the view before the first arrow. */
  readonly stand: () => PhotoPoint;
  /** The handle it carries; it moves along. */
  readonly carried: Handle | null;
  readonly goTo: (photo: Point) => void;
  /** By so many CSS pixels. */
  readonly moveBy: (by: Point) => void;
  readonly pickUp: (handle: Handle) => void;
  readonly putDown: () => void;
  readonly hide: () => void;
}

/** The keyboard's finger: a cross-hair in photo pixels, which may carry a point of what is selected. */
export function useCross(marking: Marking, control: ViewControl, box: Size): Cross {
  const [shown, setShown] = useState<Point | null>(null);
  const [carried, setCarried] = useState<Handle | null>(null);
  const unitPx = 1 / control.view.zoom;
  const middle = (): Point => pickPoint(control.view, { x: box.width / 2, y: box.height / 2 });
  /** With the grain of the view it is set in. */
  const seen = (at: Point): PhotoPoint => ({ ...roundPoint(at), grainPx: grainOf(unitPx) });

  const goTo = (at: Point) => {
    setShown(at);
    control.show(at);
    if (carried) marking.setDraft({ kind: "change", action: carried.move(seen(at)) });
    else marking.hover(at);
  };
  return {
    shown,
    stand: () => {
      const at = seen(shown ?? middle());
      setShown(at);
      return at;
    },
    carried,
    goTo,
    moveBy: (by) => goTo(seen(add(shown ?? middle(), times(by, unitPx)))),
    pickUp: (handle) => {
      setCarried(handle);
      setShown(handle.at);
      marking.say("Point picked up. Move it, then Space to put it down.");
    },
    putDown: () => setCarried(null),
    hide: () => setShown(null),
  };
}
