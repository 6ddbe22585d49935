"use client";

// The core and the one shape that is drawn: the libraries' front doors bring every shape, filter and tween there is.
import Konva from "konva/lib/Core.js";
import { Image as KonvaImageNode } from "konva/lib/shapes/Image.js";
import { memo, useEffect, useRef, type ReactNode } from "react";
import { Image as KonvaImage, Layer, Shape, Stage } from "react-konva/es/ReactKonvaCore.js";
import type { Primitive } from "@/lib/marks";
import { keepPicture, layKept, type KeptPicture } from "./kept-picture";
import { beyond } from "./live-view";
import { paintAll } from "./paint";
import type { CanvasPhoto } from "./canvas-photo";
import { levelFor, type Picture } from "./use-photo";
import type { ViewControl } from "./use-view";
import { PIXEL_ZOOM, type Size, type View } from "./view";

/** The core draws what has made itself known to it, and this one does so when its file is loaded. */
void KonvaImageNode;

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

/**
 * A list that is too long to be painted while a hand moves the photo: painted where the hand rested last, with some room beyond
 * the box, and laid as one picture until it rests again.
 */
const KeptPainting = memo(function KeptPainting({ list, box, view, live }: KeptProps) {
  const kept = useRef<KeptPicture>(null);
  return (
    <Shape
      listening={false}
      perfectDrawEnabled={false}
      sceneFunc={(context) => {
        const ratio = Konva.pixelRatio;
        const room = beyond(box, ratio);
        kept.current = keepPicture(kept.current, { list, view, box, room, ratio });
        layKept(context._context as CanvasRenderingContext2D, kept.current, live.now());
      }}
    />
  );
});

interface KeptProps extends Pick<ViewControl, "view" | "live"> {
  readonly list: readonly Primitive[];
  readonly box: Size;
}

interface StageProps {
  readonly box: Size;
  readonly control: ViewControl;
  readonly photo: CanvasPhoto;
  readonly levels: readonly Picture[];
  readonly marks: readonly Primitive[];
  readonly draft: readonly Primitive[];
  /** CSS filter on the photo alone; empty for none. */
  readonly filter: string;
}

/**
 * The photo, over it what stands, over that what the hand holds: three canvases, none of which listens, for what lies under a
 * finger is a question to the drawing and not to the pixels. While a hand pans or zooms, photo and marks are laid as the pictures
 * they are, and no element of the page changes: what a browser without a graphics card does for each moved element costs more
 * than both pictures.
 */
export default function CanvasStage({ box, control, photo, levels, marks, draft, filter }: StageProps) {
  return (
    <Stage width={box.width} height={box.height} listening={false}>
      <PhotoLayer {...{ control, photo, levels, filter }} />
      {/* Hidden when empty: a browser that paints without a graphics card keeps showing a frame that was only cleared. */}
      <LaidLayer control={control} visible={marks.length > 0}>
        <KeptPainting list={marks} box={box} view={control.view} live={control.live} />
      </LaidLayer>
      <LaidLayer control={control} visible={draft.length > 0}>
        <Painting list={draft} />
      </LaidLayer>
    </Stage>
  );
}

const laidBy = ({ zoom, pan }: View) => ({ x: pan.x, y: pan.y, scaleX: zoom, scaleY: zoom });

/** Close up, the pixels themselves are seen, not a smooth guess of what lies between them. */
const photoLaidBy = (view: View) => ({ ...laidBy(view), imageSmoothingEnabled: view.zoom < PIXEL_ZOOM });

function PhotoLayer({
  control: { view, live },
  photo,
  levels,
  filter,
}: Pick<StageProps, "control" | "photo" | "levels" | "filter">) {
  const layer = useRef<Konva.Layer>(null);
  const image = useRef<KonvaImageNode>(null);
  const levelAt = ({ zoom }: View) => levelFor(levels, photo.widthPx * zoom * Konva.pixelRatio);
  useEffect(() => {
    const canvas = layer.current?.getCanvas()._canvas;
    if (canvas) canvas.style.filter = filter;
  }, [filter]);
  useEffect(() =>
    live.follow((now) => {
      const level = levelAt(now);
      if (level) image.current?.image(level);
      layer.current?.setAttrs(photoLaidBy(now));
      layer.current?.batchDraw();
    }),
  );
  const picture = levelAt(view);
  return (
    <Layer {...photoLaidBy(view)} listening={false} ref={layer}>
      {picture && (
        <KonvaImage
          ref={image}
          image={picture}
          width={photo.widthPx}
          height={photo.heightPx}
          listening={false}
        />
      )}
    </Layer>
  );
}

/** A canvas over the photo that goes along with it. */
function LaidLayer({
  control: { view, live },
  visible,
  children,
}: Pick<StageProps, "control"> & { visible: boolean; children: ReactNode }) {
  const layer = useRef<Konva.Layer>(null);
  useEffect(() => {
    if (!visible) return undefined;
    return live.follow((now) => {
      layer.current?.setAttrs(laidBy(now));
      layer.current?.batchDraw();
    });
  }, [live, visible]);
  return (
    <Layer {...laidBy(view)} listening={false} visible={visible} ref={layer}>
      {children}
    </Layer>
  );
}
