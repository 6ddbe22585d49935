"use client";

import { useMemo } from "react";
import { crossPicture, type EaselState } from "@/components/canvas-kit";
import { layerInk, palette } from "@/components/picture";
import { editLayer, itemPrimitives, layerPrimitives, type LayerPoint } from "@/lib/course";
import { fitLabels, primitives, scene, type Drawing, type Primitive } from "@/lib/marks";
import { imperfections } from "@/lib/trade";
import { draftItem } from "./layer-draft";
import type { LayerWork } from "./layer-work";
import type { LayerDraft } from "./use-layer-draft";

/** Both hands as primitives in photo pixels: the student's marks under the instructor's layer, then what is in hand. */
export function useLayerPicture(
  { photo, unitPx }: EaselState,
  { drawing, history, selectedId, tool }: LayerWork,
  { placed, dragged, held }: LayerDraft,
  cross: LayerPoint | null,
) {
  const { widthPx, heightPx } = photo;
  const under = useMemo(() => {
    const labels = (mark: Drawing["marks"][number]) => imperfections[mark.imperfection].name;
    const shapes = fitLabels(scene(drawing, { labels, widthPx }), unitPx, null, { widthPx, heightPx });
    return shapes.flatMap((shape) => primitives(shape, palette, unitPx));
  }, [drawing, widthPx, heightPx, unitPx]);
  const shown = held ? editLayer(history, { type: "move", ...held }).present : history.present;
  const inHand = dragged.length > 0 ? dragged : placed;
  const draft = tool === "move" || tool === "text" ? null : draftItem(tool, "draft", inHand, unitPx);
  return {
    marks: [...under, ...layerPrimitives(shown, layerInk, unitPx, selectedId)],
    drafted: [
      ...(draft ? itemPrimitives(draft, layerInk, unitPx) : inHand.map((at) => dot(at, unitPx))),
      ...(cross ? crossPicture(cross, unitPx) : []),
    ],
  };
}

const dot = (at: LayerPoint, unitPx: number): Primitive => ({
  kind: "circle",
  at,
  radius: 5 * unitPx,
  stroke: layerInk.line,
  width: 4 * unitPx,
  dash: [],
});
