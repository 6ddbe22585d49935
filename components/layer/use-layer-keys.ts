"use client";

import type { KeyboardEvent } from "react";
import { useAim, wrapIndex, type EaselState } from "@/components/canvas-kit";
import type { LayerPoint } from "@/lib/course";
import { layerCommand, type LayerCommand } from "./layer-keys";
import type { LayerWork } from "./layer-work";
import type { LayerDraft } from "./use-layer-draft";

/** The whole board by keyboard: a cross to aim with, keys for tools, the selection and the history. */
export function useLayerKeys(work: LayerWork, easel: EaselState, draft: LayerDraft) {
  const { history, onAction, onToolChange, selectedId, onSelect } = work;
  const { photo, box, control } = easel;
  const aim = useAim(control, box);
  const onPhoto = ({ x, y }: LayerPoint): LayerPoint => ({
    x: Math.min(photo.widthPx, Math.max(0, x)),
    y: Math.min(photo.heightPx, Math.max(0, y)),
  });
  const next = () => {
    const at = history.present.findIndex(({ id }) => id === selectedId);
    onSelect(history.present[wrapIndex(at, 1, history.present.length) ?? -1]?.id ?? null);
  };
  const obey = (command: LayerCommand): void => {
    switch (command.do) {
      case "undo":
      case "redo":
        return onAction({ type: command.do });
      case "aim":
        return aim.goTo(onPhoto(aim.beside(command.by)));
      case "tool":
        return onToolChange(command.tool);
      case "place":
        return draft.place(aim.at());
      case "end":
        return draft.commit(draft.placed);
      case "next":
        return next();
      case "cancel":
        draft.cancel();
        return onSelect(null);
      case "remove":
        return selectedId ? onAction({ type: "remove", id: selectedId }) : undefined;
      case "zoom":
        return control.zoomBy(command.factor);
      case "fit":
        return control.fit();
    }
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const command = layerCommand(event);
    if (command === null) return;
    obey(command);
    event.preventDefault();
  };
  return { cross: aim.shown, hideCross: aim.hide, onKeyDown };
}
