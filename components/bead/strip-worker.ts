import { findStrip, type RgbaImage } from "@/lib/strip";

/** Looks for the printed strip away from the screen's own thread, so that the photo can still be moved meanwhile. */
self.onmessage = ({ data }: MessageEvent<RgbaImage>) => self.postMessage(findStrip(data));
