import { followEdge, type EdgeWindow, type GreyPatch } from "@/lib/edge";
import type { PhotoPoint } from "@/lib/marks";

export interface EdgeAsked {
  readonly patch: GreyPatch & { readonly grey: Uint8Array<ArrayBuffer> };
  readonly window: EdgeWindow;
  readonly from: PhotoPoint;
  readonly to: PhotoPoint;
}

/** Follows an edge away from the screen's own thread, so that pointer and photo stay as quick as they were. */
self.onmessage = ({ data: { patch, window, from, to } }: MessageEvent<EdgeAsked>) =>
  self.postMessage(followEdge(patch, window, from, to));
