import { seenScale } from "@/lib/sight";
import type { RgbaImage } from "@/lib/strip";

/** Looks for anything of known size away from the screen's own thread. */
self.onmessage = ({ data }: MessageEvent<RgbaImage>) => self.postMessage({ seen: seenScale(data) });
