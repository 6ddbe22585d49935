"use client";

import { useState } from "react";
import type { Handle } from "./handles";
import type { Marking } from "./use-marking";

/** One point of what is selected, chosen by a tap or by the keys: it can be taken out without a keyboard. */
export interface PickedPoint {
  readonly handle: Handle | null;
  /** 1..n among the points, 0 without one. */
  readonly number: number;
  readonly count: number;
  readonly pick: (handle: Handle | null) => void;
  /** Takes a point out, where the shape can spare it. */
  readonly remove: (handle: Handle) => void;
}

/** Forgets the point by itself when its handle is gone: another mark, another tool, a point less. */
export function usePickedPoint(handles: readonly Handle[], marking: Marking): PickedPoint {
  const [key, setKey] = useState<string | null>(null);
  const points = handles.filter(({ role }) => role === "point");
  const index = points.findIndex((handle) => handle.key === key);
  const numberOf = (handle: Handle): number => points.findIndex((one) => one.key === handle.key) + 1;
  return {
    handle: points[index] ?? null,
    number: index + 1,
    count: points.length,
    pick: (handle) => {
      setKey(handle?.role === "point" ? handle.key : null);
      if (handle?.role === "point") marking.say(`Point ${numberOf(handle)} of ${points.length}`);
      if (handle?.role === "radius") marking.say("Size of the spot");
    },
    remove: (handle) => {
      if (handle.remove === null) return;
      setKey(null);
      marking.settle({ draft: null, finished: { kind: "change", action: handle.remove } });
      marking.say(`Point ${numberOf(handle)} removed, ${points.length - 1} left`);
    },
  };
}
