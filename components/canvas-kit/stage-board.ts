// Each by its own file: the door of the library brings every shape, filter and tween that it has.
import { Konva } from "konva/lib/Global.js";
import { Layer } from "konva/lib/Layer.js";
import { Shape } from "konva/lib/Shape.js";
import { Stage } from "konva/lib/Stage.js";
import { Image as KonvaImage } from "konva/lib/shapes/Image.js";
import type { Primitive } from "@/lib/marks";
import type { CanvasPhoto } from "./canvas-photo";
import { keepPicture, layKept, type KeptPicture } from "./kept-picture";
import { beyond } from "./live-view";
import { paintAll } from "./paint";
import { levelFor, type Picture } from "./use-photo";
import type { ViewControl } from "./use-view";
import { PIXEL_ZOOM, type Size, type View } from "./view";

/** What lies on the board. */
export interface Shown {
  readonly box: Size;
  readonly control: Pick<ViewControl, "view" | "live">;
  readonly photo: CanvasPhoto;
  readonly levels: readonly Picture[];
  readonly marks: readonly Primitive[];
  readonly draft: readonly Primitive[];
  /** CSS filter on the photo alone; empty for none. */
  readonly filter: string;
}

export interface StageBoard {
  /** Paints what differs from what was shown before. */
  readonly show: (shown: Shown) => void;
  /** While a hand moves the photo: everything goes along, and nothing else changes. */
  readonly move: (view: View) => void;
  readonly destroy: () => void;
}

/** One of the canvases, by what it shows. */
interface Sheet {
  readonly show: (shown: Shown, before: Shown | null) => void;
  readonly move: (view: View) => void;
}

/**
 * The photo, over it what stands, over that what the hand holds: three canvases, none of which listens, for what lies under a
 * finger is a question to the drawing and not to the pixels. While a hand pans or zooms, photo and marks are laid as the pictures
 * they are, and no element of the page changes: what a browser without a graphics card does for each moved element costs more
 * than both pictures.
 */
export function stageBoard(container: HTMLDivElement): StageBoard {
  // More device pixels than two per CSS pixel cost a phone its smoothness and show nobody anything.
  Konva.pixelRatio = Math.min(window.devicePixelRatio || 1, 2);
  const stage = new Stage({ container, listening: false });
  const sheets = [photoSheet(stage), marksSheet(stage), draftSheet(stage)];
  let before: Shown | null = null;
  return {
    show: (shown) => {
      if (shown.box !== before?.box) stage.size(shown.box);
      for (const sheet of sheets) sheet.show(shown, before);
      before = shown;
    },
    move: (view) => {
      for (const sheet of sheets) sheet.move(view);
    },
    destroy: () => stage.destroy(),
  };
}

const laidBy = ({ zoom, pan }: View) => ({ x: pan.x, y: pan.y, scaleX: zoom, scaleY: zoom });

/** Close up, the pixels themselves are seen, not a smooth guess of what lies between them. */
const photoLaidBy = (view: View) => ({ ...laidBy(view), imageSmoothingEnabled: view.zoom < PIXEL_ZOOM });

function photoSheet(stage: Stage): Sheet {
  const layer = new Layer({ listening: false });
  const image = new KonvaImage({ image: undefined, listening: false });
  stage.add(layer.add(image));
  let shown: Shown | null = null;
  const move = (view: View): void => {
    if (shown === null) return;
    const { levels, photo } = shown;
    const level = levelFor(levels, photo.widthPx * view.zoom * Konva.pixelRatio);
    image.setAttrs({ image: level ?? undefined, width: photo.widthPx, height: photo.heightPx });
    layer.setAttrs(photoLaidBy(view));
    layer.batchDraw();
  };
  return {
    show: (next, before) => {
      shown = next;
      layer.getCanvas()._canvas.style.filter = next.filter;
      const isSame = before && (["control", "photo", "levels", "box"] as const).every(same(next, before));
      if (!isSame) move(whereNow(next, before));
    },
    move,
  };
}

/**
 * Marks are too many to be painted while a hand moves the photo: they are painted where the hand rested last, with some room
 * beyond the box, and laid as one picture until it rests again.
 */
function marksSheet(stage: Stage): Sheet {
  let kept: KeptPicture | null = null;
  return laidSheet(stage, "marks", (context, { marks: list, box, control: { view, live } }) => {
    const ratio = Konva.pixelRatio;
    kept = keepPicture(kept, { list, view, box, room: beyond(box, ratio), ratio });
    layKept(context, kept, live.now());
  });
}

const draftSheet = (stage: Stage): Sheet =>
  laidSheet(stage, "draft", (context, { draft }) => paintAll(context, draft));

/** A canvas over the photo that goes along with it: one node that paints a list, which is the truth and the node its picture. */
function laidSheet(
  stage: Stage,
  what: "marks" | "draft",
  paint: (context: CanvasRenderingContext2D, shown: Shown) => void,
): Sheet {
  let shown: Shown | null = null;
  // Hidden when empty: a browser that paints without a graphics card keeps showing a frame that was only cleared.
  const layer = new Layer({ listening: false, visible: false });
  const node = new Shape({
    listening: false,
    perfectDrawEnabled: false,
    sceneFunc: (context) => {
      if (shown) paint(context._context as CanvasRenderingContext2D, shown);
    },
  });
  stage.add(layer.add(node));
  const move = (view: View): void => {
    if (shown === null || shown[what].length === 0) return;
    layer.setAttrs(laidBy(view));
    layer.batchDraw();
  };
  return {
    show: (next, before) => {
      shown = next;
      layer.visible(next[what].length > 0);
      if (!before || !([what, "control", "box"] as const).every(same(next, before)))
        move(whereNow(next, before));
    },
    move,
  };
}

/** Where the hand is: at a view that is told anew, else wherever it has moved since. */
const whereNow = ({ control: { view, live } }: Shown, before: Shown | null): View =>
  view === before?.control.view ? live.now() : view;

/** Whether a part is what it was: what was painted from the very same is not painted again. */
const same =
  (next: Shown, before: Shown) =>
  (part: keyof Shown): boolean =>
    part === "control" ? next.control.view === before.control.view : next[part] === before[part];
