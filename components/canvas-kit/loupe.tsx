"use client";

import { useEffect, useRef } from "react";
import type { Primitive } from "@/lib/marks";
import styles from "./loupe.module.css";
import { paintAll } from "./paint";
import type { CanvasPhoto } from "./canvas-photo";
import type { Picture } from "./use-photo";
import type { LoupePlace } from "./use-pointers";
import { PIXEL_ZOOM, type Size } from "./view";

/** CSS pixels. */
const SIZE = 148;
const ABOVE = 124;
const MAGNIFY = 2.6;

/** Above the finger; where there is no room above, beside it. */
function loupeCorner({ screen }: LoupePlace, box: Size): { left: number; top: number } {
  const above = screen.y - ABOVE - SIZE / 2;
  const left = Math.min(Math.max(screen.x - SIZE / 2, 4), Math.max(4, box.width - SIZE - 4));
  if (above >= 4) return { left, top: above };
  const beside = screen.x > box.width / 2 ? screen.x - ABOVE - SIZE / 2 : screen.x + ABOVE - SIZE / 2;
  return { left: beside, top: Math.max(4, screen.y - SIZE / 2 - 40) };
}

/** A magnifier with a cross-hair, so that the finger does not hide the point it sets. */
export function Loupe({
  place,
  box,
  zoom,
  photo,
  picture,
  paintings,
}: {
  place: LoupePlace;
  box: Size;
  zoom: number;
  photo: CanvasPhoto;
  picture: Picture | null;
  paintings: readonly (readonly Primitive[])[];
}) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const pen = canvas.current?.getContext("2d");
    if (!pen) return;
    const ratio = Math.min(window.devicePixelRatio || 1, 2);
    const scale = zoom * MAGNIFY * ratio;
    pen.setTransform(1, 0, 0, 1, 0, 0);
    pen.clearRect(0, 0, SIZE * ratio, SIZE * ratio);
    pen.translate((SIZE / 2) * ratio, (SIZE / 2) * ratio);
    pen.scale(scale, scale);
    pen.translate(-place.photo.x, -place.photo.y);
    pen.imageSmoothingEnabled = zoom * MAGNIFY < PIXEL_ZOOM;
    if (picture) pen.drawImage(picture, 0, 0, photo.widthPx, photo.heightPx);
    for (const list of paintings) paintAll(pen, list);
  });
  const ratio = typeof window === "undefined" ? 1 : Math.min(window.devicePixelRatio || 1, 2);
  return (
    <div className={styles.loupe} style={loupeCorner(place, box)} aria-hidden="true">
      <canvas ref={canvas} width={SIZE * ratio} height={SIZE * ratio} className={styles.glass} />
      <span className={styles.cross} />
    </div>
  );
}
