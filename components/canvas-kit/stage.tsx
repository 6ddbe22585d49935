"use client";

import Konva from "konva";
import { memo, useEffect, useLayoutEffect, useRef, type ReactNode, type RefObject } from "react";
import { Image as KonvaImage, Layer, Shape, Stage } from "react-konva";
import type { Primitive } from "@/lib/marks";
import styles from "./easel.module.css";
import { beyond, carried } from "./live-view";
import { paintAll } from "./paint";
import type { CanvasPhoto } from "./canvas-photo";
import { levelFor, type Picture } from "./use-photo";
import type { ViewControl } from "./use-view";
import { PIXEL_ZOOM, type Size, type View } from "./view";

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
 * finger is a question to the drawing and not to the pixels. While a hand pans or zooms, only the photo is painted; the other
 * two are carried along as they are, the marks with some room beyond the box, and painted again when the hand rests.
 */
export default function CanvasStage(props: StageProps) {
  const { box, control, marks, draft } = props;
  return (
    <>
      <PhotoCanvas {...props} />
      {/* Hidden when empty: a browser that paints without a graphics card keeps showing a frame that was only cleared. */}
      <Carried {...{ box, control }} room={beyond(box, Konva.pixelRatio)} visible={marks.length > 0}>
        <Painting list={marks} />
      </Carried>
      <Carried {...{ box, control }} room={0} visible={draft.length > 0}>
        <Painting list={draft} />
      </Carried>
    </>
  );
}

const laidBy = ({ zoom, pan }: View, room: number) => ({
  x: pan.x + room,
  y: pan.y + room,
  scaleX: zoom,
  scaleY: zoom,
});

/** Close up, the pixels themselves are seen, not a smooth guess of what lies between them. */
const photoLaidBy = (view: View) => ({ ...laidBy(view, 0), imageSmoothingEnabled: view.zoom < PIXEL_ZOOM });

function PhotoCanvas({ box, control: { view, live }, photo, levels, filter }: StageProps) {
  const layer = useRef<Konva.Layer>(null);
  const image = useRef<Konva.Image>(null);
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
    <Stage width={box.width} height={box.height} listening={false}>
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
    </Stage>
  );
}

/** A canvas over the photo with `room` CSS pixels beyond each edge of the box, moved as a whole while the hand moves. */
function Carried({
  box,
  control,
  room,
  visible,
  children,
}: Pick<StageProps, "box" | "control"> & { room: number; visible: boolean; children: ReactNode }) {
  const sheet = useRef<HTMLDivElement>(null);
  const { view } = control;
  useCarrying(sheet, control, room);
  return (
    <div ref={sheet} className={styles.carried} style={{ left: -room, top: -room }}>
      <Stage width={box.width + 2 * room} height={box.height + 2 * room} listening={false}>
        <Layer {...laidBy(view, room)} listening={false} visible={visible}>
          {children}
        </Layer>
      </Stage>
    </div>
  );
}

function useCarrying(sheet: RefObject<HTMLDivElement | null>, { view, live }: ViewControl, room: number) {
  useLayoutEffect(() => {
    const carry = (now: View): void => {
      if (!sheet.current) return;
      const { k, by } = carried(view, now);
      const shift = { x: by.x + room * (1 - k), y: by.y + room * (1 - k) };
      const isHome = k === 1 && shift.x === 0 && shift.y === 0;
      sheet.current.style.transform = isHome ? "" : `matrix(${k}, 0, 0, ${k}, ${shift.x}, ${shift.y})`;
    };
    carry(live.now());
    return live.follow(carry);
  }, [sheet, view, live, room]);
}
