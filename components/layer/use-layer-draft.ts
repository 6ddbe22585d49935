"use client";

import { useState } from "react";
import { newMarkId } from "@/components/canvas-kit";
import { itemAt, type LayerPoint } from "@/lib/course";
import { draftItem } from "./layer-draft";
import type { LayerWork } from "./layer-work";

/** CSS pixels: how near a tap picks something drawn. */
const PICK_REACH = 14;

export interface LayerDraft {
  /** Points given so far by taps or keys, for the shape in hand. */
  readonly placed: readonly LayerPoint[];
  /** The drag under way. */
  readonly dragged: readonly LayerPoint[];
  readonly drag: (points: readonly LayerPoint[]) => void;
  /** What is being moved, and how far by now. */
  readonly held: { readonly id: string; readonly dx: number; readonly dy: number } | null;
  readonly hold: (held: LayerDraft["held"]) => void;
  /** The points make an item, where there are enough of them. */
  readonly commit: (points: readonly LayerPoint[]) => void;
  /** A tap or Enter: an arrow is done with its second point, a path grows until it is ended. */
  readonly place: (at: LayerPoint) => void;
  readonly cancel: () => void;
}

/** What is being drawn or moved and is no item yet. Another tool begins afresh. */
export function useLayerDraft(work: LayerWork, unitPx: number): LayerDraft {
  const { tool, history, onAction, onSelect, onTextAt } = work;
  const [placed, setPlaced] = useState<readonly LayerPoint[]>([]);
  const [dragged, drag] = useState<readonly LayerPoint[]>([]);
  const [held, hold] = useState<LayerDraft["held"]>(null);
  const [drawnWith, setDrawnWith] = useState(tool);
  if (drawnWith !== tool) {
    setDrawnWith(tool);
    setPlaced([]);
  }
  const commit = (points: readonly LayerPoint[]) => {
    if (tool === "move" || tool === "text") return;
    const item = draftItem(tool, newMarkId(), points, 1.5 * unitPx);
    setPlaced([]);
    drag([]);
    if (!item) return;
    onAction({ type: "add", item });
    onSelect(item.id);
  };
  const place = (at: LayerPoint) => {
    if (tool === "move")
      return onSelect(itemAt(history.present, at, PICK_REACH * unitPx, unitPx)?.id ?? null);
    if (tool === "text") return onTextAt(at);
    const points = [...placed, at];
    if (tool === "arrow" && points.length === 2) commit(points);
    else setPlaced(points);
  };
  const cancel = () => {
    setPlaced([]);
    drag([]);
    hold(null);
  };
  return { placed, dragged, drag, held, hold, commit, place, cancel };
}
