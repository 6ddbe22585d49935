import { useState, type KeyboardEvent } from "react";
import type { ViewControl } from "@/components/canvas/use-view";
import { toPhoto, type Size } from "@/components/canvas/view";
import type { LayerPoint } from "@/lib/course";
import type { LayerCanvasProps } from "./layer-canvas-props";
import type { LayerTool } from "./layer-draft";

const toolKeys: Readonly<Record<string, LayerTool>> = {
  m: "move",
  a: "arrow",
  t: "text",
  f: "freehand",
  o: "outline",
};
const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

interface Plan {
  readonly place: (at: LayerPoint) => void;
  readonly end: () => void;
  readonly cancel: () => void;
}

/** The whole board by keyboard: a cross to aim with, keys for tools, the selection and the history. */
export function useLayerKeys(
  { photo, history, onAction, onToolChange, selectedId, onSelect }: LayerCanvasProps,
  control: ViewControl,
  box: Size,
  plan: Plan,
) {
  const [cross, setCross] = useState<LayerPoint | null>(null);
  const middle = (): LayerPoint => toPhoto(control.view, { x: box.width / 2, y: box.height / 2 });
  const aim = (key: string, far: boolean) => {
    const [dx, dy] = arrows[key]!;
    const step = (far ? 40 : 8) / control.view.zoom;
    const from = cross ?? middle();
    const at = {
      x: Math.min(photo.widthPx, Math.max(0, from.x + dx * step)),
      y: Math.min(photo.heightPx, Math.max(0, from.y + dy * step)),
    };
    setCross(at);
    control.show(at);
  };
  const next = () => {
    const at = history.present.findIndex(({ id }) => id === selectedId);
    onSelect(history.present[(at + 1) % Math.max(1, history.present.length)]?.id ?? null);
  };

  /** True when the key was ours. */
  const act = (event: KeyboardEvent): boolean => {
    const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
    if (event.ctrlKey || event.metaKey) {
      if (key !== "z") return false;
      onAction({ type: event.shiftKey ? "redo" : "undo" });
      return true;
    }
    if (Object.hasOwn(arrows, key)) aim(key, event.shiftKey);
    else if (Object.hasOwn(toolKeys, key)) onToolChange(toolKeys[key]!);
    else if (key === "Enter") plan.place(cross ?? middle());
    else if (key === "e") plan.end();
    else if (key === "n") next();
    else if (key === "Escape") {
      plan.cancel();
      onSelect(null);
    } else if (key === "Delete" || key === "Backspace") {
      if (selectedId) onAction({ type: "remove", id: selectedId });
    } else if (key === "+" || key === "=") control.zoomBy(1.4, undefined);
    else if (key === "-") control.zoomBy(1 / 1.4);
    else if (key === "0") control.fit();
    else return false;
    return true;
  };

  return {
    cross,
    hideCross: () => setCross(null),
    onKeyDown: (event: KeyboardEvent) => {
      if (act(event)) event.preventDefault();
    },
  };
}
