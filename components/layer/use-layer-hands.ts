"use client";

import { usePointers, type EaselState } from "@/components/canvas-kit";
import { itemAt } from "@/lib/course";
import type { LayerWork } from "./layer-work";
import type { LayerDraft } from "./use-layer-draft";

/** What finger and mouse do to the layer. */
export function useLayerHands(
  { boxRef, control, unitPx }: EaselState,
  { tool, history, selectedId, onAction, onTextAt }: LayerWork,
  { held, hold, drag, commit, place }: LayerDraft,
  onPress: () => void,
) {
  return usePointers(boxRef, control, {
    grip: (at, reach) => {
      onPress();
      if (tool !== "move") return { kind: "stretch" };
      const under = itemAt(history.present, at, reach * unitPx, unitPx);
      // Only what was picked first is moved: a pan that begins on an item stays a pan.
      return under && under.id === selectedId ? { kind: "stretch" } : { kind: "pan" };
    },
    onDrag: (_, { from, to, trail }) => {
      if (tool === "move" && selectedId) hold({ id: selectedId, dx: to.x - from.x, dy: to.y - from.y });
      else if (tool === "arrow") drag([from, to]);
      else if (tool !== "text") drag([...trail]);
    },
    onRelease: (grip, { from, to, trail }) => {
      if (grip.kind === "pan") return;
      if (tool === "move") {
        if (held) onAction({ type: "move", id: held.id, dx: held.dx, dy: held.dy });
        return hold(null);
      }
      if (tool === "text") return onTextAt(to);
      commit(tool === "arrow" ? [from, to] : trail);
    },
    onTap: (_, at) => {
      drag([]);
      place(at);
    },
    onGiveUp: () => {
      drag([]);
      hold(null);
    },
    onHover: () => undefined,
    zoomsOnDoubleTap: tool === "move",
  });
}
