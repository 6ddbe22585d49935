"use client";

import { useLayoutEffect, useRef, useState, useSyncExternalStore } from "react";
import { toScreen, type EaselState } from "@/components/canvas-kit";
import { shapePoints, type MarkShapeData } from "@/lib/marks";
import { placePicker, shiftIntoFree, type PickerPlace, type ScreenBox } from "./picker-place";

const subscribe = (change: () => void) => {
  window.addEventListener("resize", change);
  return () => window.removeEventListener("resize", change);
};
const sizeOfScreen = () => `${window.innerWidth} ${window.innerHeight}`;

/** Of the picker for a spot, or for none; follows the size of the screen. */
export function usePickerPlace(spot: NamedSpot | null): PickerPlace {
  const [width = 0, height = 0] = useSyncExternalStore(subscribe, sizeOfScreen, () => "1280 800")
    .split(" ")
    .map(Number);
  return placePicker(spot?.box ?? null, { width, height }, spot?.photo ?? null);
}

/** What is being named, and the photo it lies on, on the screen. */
export interface NamedSpot {
  readonly box: ScreenBox;
  readonly photo: ScreenBox;
}

/** A point mark is drawn as a ring of this many CSS pixels. */
const RING = 12;

/** Where a shape lies on the screen now. */
function boxOf(shape: MarkShapeData, { boxRef, control }: EaselState): ScreenBox | null {
  const at = boxRef.current?.getBoundingClientRect();
  if (!at) return null;
  const radius = shape.kind === "point" ? Math.max(RING, (shape.radius ?? 0) * control.view.zoom) : 4;
  const points = shapePoints(shape).map((point) => toScreen(control.view, point));
  const xs = points.map(({ x }) => Math.min(at.width, Math.max(0, x)));
  const ys = points.map(({ y }) => y);
  return {
    left: at.left + Math.min(...xs) - radius,
    right: at.left + Math.max(...xs) + radius,
    top: at.top + Math.min(...ys) - radius,
    bottom: at.top + Math.max(...ys) + radius,
  };
}

/**
 * The place of a shape that is being named, as it lay when it was drawn. Where the picker comes from below, page and
 * photo move so that the shape lies in what is left free; both move back once it has a name.
 */
export function useSpotInSight(shape: MarkShapeData | null, easel: EaselState): NamedSpot | null {
  const [spot, setSpot] = useState<NamedSpot | null>(null);
  const back = useRef<(() => void) | null>(null);
  useLayoutEffect(() => {
    if (shape === null) {
      back.current?.();
      back.current = null;
      return;
    }
    const box = boxOf(shape, easel);
    const photo = easel.boxRef.current?.getBoundingClientRect();
    setSpot(box && photo ? { box, photo } : null);
    const place = placePicker(box, { width: window.innerWidth, height: window.innerHeight }, photo ?? null);
    if (place.kind === "below") back.current = bringIntoSight(shape, easel, place.top);
    // Once for each shape: what moves afterwards is this itself.
    // eslint-disable-next-line react-hooks/exhaustive-deps
  }, [shape]);
  return shape === null ? null : spot;
}

function bringIntoSight(shape: MarkShapeData, easel: EaselState, sheetTop: number): () => void {
  const { boxRef, control } = easel;
  const { scrollX, scrollY } = window;
  // The page first: a canvas half scrolled away has little free above a sheet.
  boxRef.current?.scrollIntoView({ block: "start", behavior: "instant" });
  const now = boxOf(shape, easel);
  const canvas = boxRef.current?.getBoundingClientRect();
  const { view } = control;
  if (now && canvas) {
    const free = { top: Math.max(0, canvas.top), bottom: Math.min(sheetTop, canvas.bottom) };
    const down = shiftIntoFree(now, free);
    if (down !== 0) control.panBy({ x: 0, y: down });
  }
  return () => {
    control.look(view);
    window.scrollTo({ left: scrollX, top: scrollY, behavior: "instant" });
  };
}
