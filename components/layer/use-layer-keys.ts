"use client";

import type { KeyboardEvent } from "react";
import { useAim, wrapIndex, type Aim, type EaselState } from "@/components/canvas-kit";
import type { LayerPoint } from "@/lib/course";
import { layerCommand, type LayerCommand } from "./layer-keys";
import type { LayerWork } from "./layer-work";
import type { LayerDraft } from "./use-layer-draft";

/** The whole board by keyboard: a cross to aim with, keys for tools, the selection and the history. */
export function useLayerKeys(work: LayerWork, easel: EaselState, draft: LayerDraft) {
  const aim = useAim(easel.control, easel.box);
  const onKeyDown = (event: KeyboardEvent) => {
    const command = layerCommand(event);
    if (command === null) return;
    obey(command, { work, easel, draft, aim });
    event.preventDefault();
  };
  return { cross: aim.shown, hideCross: aim.hide, onKeyDown };
}

interface Hands {
  readonly work: LayerWork;
  readonly easel: EaselState;
  readonly draft: LayerDraft;
  readonly aim: Aim;
}

function obey(command: LayerCommand, { work, easel, draft, aim }: Hands): void {
  const { onAction, selectedId, onSelect } = work;
  switch (command.do) {
    case "undo":
    case "redo":
      return onAction({ type: command.do });
    case "aim":
      return aim.goTo(onPhoto(aim.beside(command.by), easel));
    case "tool":
      return work.onToolChange(command.tool);
    case "place":
      return draft.place(aim.at());
    case "end":
      return draft.commit(draft.placed);
    case "next":
      return onSelect(nextItem(work));
    case "cancel":
      draft.cancel();
      return onSelect(null);
    case "remove":
      return selectedId ? onAction({ type: "remove", id: selectedId }) : undefined;
    case "zoom":
      return easel.control.zoomBy(command.factor);
    case "fit":
      return easel.control.fit();
  }
}

const onPhoto = ({ x, y }: LayerPoint, { photo }: EaselState): LayerPoint => ({
  x: Math.min(photo.widthPx, Math.max(0, x)),
  y: Math.min(photo.heightPx, Math.max(0, y)),
});

/** The next thing drawn, round and round. */
function nextItem({ history: { present }, selectedId }: LayerWork): string | null {
  const at = present.findIndex(({ id }) => id === selectedId);
  return present[wrapIndex(at, 1, present.length) ?? -1]?.id ?? null;
}
