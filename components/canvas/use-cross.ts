"use client";

import { useState } from "react";
import { grainOf, roundPoint, useAim, type EaselState } from "@/components/canvas-kit";
import { add, type Point } from "@/lib/geometry";
import type { PhotoPoint } from "@/lib/marks";
import type { Handle } from "./handles";
import type { Marking } from "./use-marking";

export interface Cross {
  /** Where it is, photo pixels; null while nobody uses the keyboard. */
  readonly shown: Point<"photo"> | null;
  /** Shows it and says where a point would be placed now: the middle of the view before the first arrow. */
  readonly stand: () => PhotoPoint;
  /** The handle it carries; it moves along. */
  readonly carried: Handle | null;
  readonly goTo: (photo: Point<"photo">) => void;
  /** By so many CSS pixels. */
  readonly moveBy: (by: Point<"view">) => void;
  /** By so many photo pixels, however the photo lies. */
  readonly nudge: (by: Point<"photo">) => void;
  readonly pickUp: (handle: Handle) => void;
  readonly putDown: () => void;
  readonly hide: () => void;
}

/** The cross-hair of the marks, which may carry a point of what is selected. */
export function useCross(marking: Marking, easel: EaselState): Cross {
  const aim = useAim(easel.control, easel.box);
  const [carried, setCarried] = useState<Handle | null>(null);
  /** With the grain of the view it is set in. */
  const seen = (at: Point<"photo">): PhotoPoint => ({ ...roundPoint(at), grainPx: grainOf(easel.unitPx) });
  const goTo = (at: Point<"photo">) => {
    aim.goTo(at);
    if (carried) marking.setDraft({ kind: "change", action: carried.move(seen(at)) });
    else marking.hover(at);
  };
  return {
    shown: aim.shown,
    stand: () => {
      const at = seen(aim.at());
      aim.show(at);
      return at;
    },
    carried,
    goTo,
    moveBy: (by) => goTo(seen(aim.beside(by))),
    nudge: (by) => goTo(seen(add(aim.at(), by))),
    pickUp: (handle) => {
      setCarried(handle);
      aim.show(handle.at);
      marking.say("Point picked up. Move it, then Space to put it down.");
    },
    putDown: () => setCarried(null),
    hide: aim.hide,
  };
}
