"use client";

import Konva from "konva";
import { memo, useEffect, useRef } from "react";
import { Image as KonvaImage, Layer, Shape, Stage } from "react-konva";
import type { Primitive } from "@/lib/marks";
import { paintAll } from "./paint";
import type { CanvasPhoto } from "./canvas-photo";
import { levelFor, type Picture } from "./use-photo";
import type { Size, View } from "./view";

/** More device pixels than two per CSS pixel cost a phone its smoothness and show nobody anything. */
if (typeof window !== "undefined") Konva.pixelRatio = Math.min(window.devicePixelRatio || 1, 2);

/**
 * One node that paints a list of primitives; the list is the truth, the node only its picture. The same list is not
 * painted again: while one mark is dragged, the layer of all others stays as it is.
 */
const Painting = memo(function Painting({ list }: { list: readonly Primitive[] }) {
  return (
    <Shape
      listening={false}
      perfectDrawEnabled={false}
      sceneFunc={(context) => paintAll(context._context as CanvasRenderingContext2D, list)}
    />
  );
});

/** Three layers, none of which listens: what lies under a finger is a question to the drawing, not to the pixels. */
export default function CanvasStage({
  box,
  view,
  photo,
  levels,
  marks,
  draft,
  filter,
}: {
  box: Size;
  view: View;
  photo: CanvasPhoto;
  levels: readonly Picture[];
  marks: readonly Primitive[];
  draft: readonly Primitive[];
  /** CSS filter on the photo alone; empty for none. */
  filter: string;
}) {
  const photoLayer = useRef<Konva.Layer>(null);
  useEffect(() => {
    const canvas = photoLayer.current?.getCanvas()._canvas;
    if (canvas) canvas.style.filter = filter;
  }, [filter]);
  const picture = levelFor(levels, photo.widthPx * view.zoom * Konva.pixelRatio);
  const place = { x: view.pan.x, y: view.pan.y, scaleX: view.zoom, scaleY: view.zoom, listening: false };
  return (
    <Stage width={box.width} height={box.height} listening={false}>
      <Layer {...place} ref={photoLayer}>
        {picture && (
          <KonvaImage image={picture} width={photo.widthPx} height={photo.heightPx} listening={false} />
        )}
      </Layer>
      <Layer {...place} visible={marks.length > 0}>
        <Painting list={marks} />
      </Layer>
      {/* Hidden when empty: a browser that paints without a graphics card keeps showing a frame that was only cleared. */}
      <Layer {...place} visible={draft.length > 0}>
        <Painting list={draft} />
      </Layer>
    </Stage>
  );
}
