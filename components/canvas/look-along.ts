import { levelFor, type EaselState } from "@/components/canvas-kit";
import { windowFor, type EdgeWindow, type GreyPatch } from "@/lib/edge";
import type { PhotoPoint } from "@/lib/marks";
import type { EdgeAsked } from "./edge-worker";

interface Wanted {
  readonly from: PhotoPoint;
  readonly to: PhotoPoint;
}

type Seen = Pick<EaselState, "photo" | "loaded" | "unitPx">;

interface Turn {
  readonly asked: EdgeAsked;
  readonly resolve: (corners: readonly PhotoPoint[] | null) => void;
  readonly reject: (error: Error) => void;
}

let worker: Worker | null = null;
let running: Turn | null = null;
let waiting: Turn | null = null;

/**
 * Corners of the edge between two points. One search at a time: of those asked for meanwhile only the last is made, the
 * others come to null.
 */
export function lookAlong(seen: Seen, { from, to }: Wanted): Promise<readonly PhotoPoint[] | null> {
  const [best] = seen.loaded.levels;
  if (!best) return Promise.resolve([]);
  const finestPx = Math.max(seen.unitPx, seen.photo.widthPx / best.width);
  const window = windowFor(from, to, seen.photo, finestPx);
  const patch = window && greyOf(seen, window);
  if (!window || !patch) return Promise.resolve([]);
  return new Promise((resolve, reject) => {
    waiting?.resolve(null);
    waiting = { asked: { patch, window, from, to }, resolve, reject };
    if (running === null) nextTurn();
  });
}

function nextTurn(): void {
  running = waiting;
  waiting = null;
  if (running === null) return;
  worker ??= newWorker();
  worker.postMessage(running.asked, [running.asked.patch.grey.buffer]);
}

function newWorker(): Worker {
  const made = new Worker(new URL("./edge-worker.ts", import.meta.url), { type: "module" });
  made.onmessage = ({ data }: MessageEvent<readonly PhotoPoint[]>) => {
    running?.resolve(data);
    nextTurn();
  };
  made.onerror = () => {
    made.terminate();
    worker = null;
    running?.reject(new Error("the search ended early"));
    nextTurn();
  };
  return made;
}

/** The window in shades of grey, out of the smallest picture that shows it as finely. Null where the browser gives no pixels. */
function greyOf(
  { photo, loaded }: Seen,
  window: EdgeWindow,
): (GreyPatch & { grey: Uint8Array<ArrayBuffer> }) | null {
  const { corner, stepPx, columns, rows } = window;
  const picture = levelFor(loaded.levels, photo.widthPx / stepPx);
  const pen = new OffscreenCanvas(columns, rows).getContext("2d", { willReadFrequently: true });
  if (!picture || !pen) return null;
  const scale = picture.width / photo.widthPx;
  const part = [corner.x, corner.y, columns * stepPx, rows * stepPx].map((value) => value * scale);
  pen.drawImage(picture, part[0]!, part[1]!, part[2]!, part[3]!, 0, 0, columns, rows);
  const { data } = pen.getImageData(0, 0, columns, rows);
  const grey = new Uint8Array(columns * rows);
  // Luma of ITU-R BT.601.
  for (let k = 0; k < grey.length; k++)
    grey[k] = Math.round(0.299 * data[4 * k]! + 0.587 * data[4 * k + 1]! + 0.114 * data[4 * k + 2]!);
  return { columns, rows, grey };
}
