"use client";

import { useRef } from "react";
import { usePointers, type EaselState } from "@/components/canvas-kit";
import { dragDraft, gripAt, release, tap, type Grip, type Reach, type Scenery } from "./gesture";
import { pickAt } from "./suggested";
import type { Marking } from "./use-marking";
import type { PickedPoint } from "./use-picked-point";

/** What finger and mouse do to the drawing: a grip decided at the press, a draft while it lasts, one action at its end. */
export function useHands(
  { boxRef, control }: EaselState,
  marking: Marking,
  scenery: Scenery,
  picked: PickedPoint,
  onPress: () => void,
) {
  const { tool, draft, unitPx } = scenery;
  const draftAtPress = useRef(draft);
  const pickPointOf = (grip: Grip): boolean => {
    const handle = grip.kind === "handle" && grip.handle.role === "point" ? grip.handle : null;
    picked.pick(handle);
    return handle !== null;
  };
  return usePointers(boxRef, control, {
    grip: (at, css) => {
      onPress();
      draftAtPress.current = draft;
      return gripAt(scenery, at, css);
    },
    onDrag: (grip, drag) => marking.setDraft(dragDraft(grip, draftAtPress.current, { ...drag, tool })),
    onRelease: (grip, drag, css) => {
      pickPointOf(grip);
      marking.settle(release(grip, draftAtPress.current, { ...drag, tool }, reachOf(css, unitPx, marking)));
    },
    onTap: (grip, at, css) => {
      if (pickPointOf(grip)) return;
      if (tool === "move") pickAt(scenery, marking.select, at, css);
      else marking.settle(tap(grip, draftAtPress.current, tool, at, reachOf(css, unitPx, marking)));
    },
    onGiveUp: () => marking.setDraft(draftAtPress.current),
    onHover: marking.hover,
    zoomsOnDoubleTap: tool === "move",
  });
}

const reachOf = (css: number, unitPx: number, { scaleKind, edge }: Marking): Reach => ({
  again: css * unitPx,
  tolerance: 2.5 * unitPx,
  scaleKind,
  ...(edge ? { edge } : {}),
});
