"use client";

import { useRef, type RefObject } from "react";
import type { CanvasPhoto } from "./canvas-photo";
import { useBox } from "./use-box";
import { usePhoto, type LoadedPhoto } from "./use-photo";
import { useView, type ViewControl } from "./use-view";
import type { Size } from "./view";

/** A photo laid out to work on: the element it lies in, its size, the view and the pictures there are by now. */
export interface EaselState {
  readonly photo: CanvasPhoto;
  readonly boxRef: RefObject<HTMLDivElement | null>;
  readonly box: Size;
  readonly control: ViewControl;
  readonly loaded: LoadedPhoto;
  /** Photo pixels per CSS pixel. */
  readonly unitPx: number;
}

export function useEasel(photo: CanvasPhoto): EaselState {
  const boxRef = useRef<HTMLDivElement>(null);
  const box = useBox(boxRef);
  const control = useView({ width: photo.widthPx, height: photo.heightPx }, box);
  const loaded = usePhoto(photo);
  return { photo, boxRef, box, control, loaded, unitPx: 1 / control.view.zoom };
}
