import type { Primitive } from "@/lib/marks";
import { carried } from "./live-view";
import { paintAll } from "./paint";
import type { Size, View } from "./view";

/** What a kept picture shows. */
export interface Kept {
  readonly list: readonly Primitive[];
  /** In which it is painted. */
  readonly view: View;
  readonly box: Size;
  /** CSS pixels painted beyond each edge of the box. */
  readonly room: number;
  /** Device pixels per CSS pixel. */
  readonly ratio: number;
}

export interface KeptPicture extends Kept {
  readonly canvas: HTMLCanvasElement;
}

/** The list painted once, to be laid wherever the photo lies meanwhile; the one there is where it shows the same. */
export function keepPicture(before: KeptPicture | null, asked: Kept): KeptPicture {
  if (before !== null && showsSame(before, asked)) return before;
  const { box, room, ratio, view, list } = asked;
  const canvas = before?.canvas ?? document.createElement("canvas");
  // Set anew it is empty, also where it is as large as before.
  canvas.width = Math.round((box.width + 2 * room) * ratio);
  canvas.height = Math.round((box.height + 2 * room) * ratio);
  const pen = canvas.getContext("2d");
  if (pen) {
    const scale = view.zoom * ratio;
    pen.setTransform(scale, 0, 0, scale, (view.pan.x + room) * ratio, (view.pan.y + room) * ratio);
    paintAll(pen, list);
  }
  return { ...asked, canvas };
}

function showsSame(one: Kept, other: Kept): boolean {
  return (
    one.list === other.list &&
    one.room === other.room &&
    one.ratio === other.ratio &&
    one.box.width === other.box.width &&
    one.box.height === other.box.height &&
    isSameView(one.view, other.view)
  );
}

const isSameView = (a: View, b: View): boolean =>
  a.zoom === b.zoom && a.pan.x === b.pan.x && a.pan.y === b.pan.y;

/** Where the picture lies in device pixels of the box when the photo lies as in `now`: scaled by `k`, its corner at (x, y). */
export function placeOfKept(
  { view, room, ratio }: Kept,
  now: View,
): { readonly k: number; readonly x: number; readonly y: number } {
  const { k, by } = carried(view, now);
  return { k, x: (by.x - room * k) * ratio, y: (by.y - room * k) * ratio };
}

/** Lays it on a canvas of the box. */
export function layKept(
  pen: Pick<CanvasRenderingContext2D, "save" | "restore" | "setTransform" | "drawImage">,
  kept: KeptPicture,
  now: View,
): void {
  const { k, x, y } = placeOfKept(kept, now);
  pen.save();
  pen.setTransform(k, 0, 0, k, x, y);
  pen.drawImage(kept.canvas, 0, 0);
  pen.restore();
}
