import type { Point } from "@/lib/geometry";
import { proposeLine, traceBead, type Pixels } from "@/lib/trace";
import { runFinder, runReader } from "./trace-runtime";

interface Asked {
  readonly id: number;
  readonly image: Pixels;
  /** Where the bead runs; null: that is the question. */
  readonly line: readonly Point<"photo">[] | null;
}

/** Reads a bead, or looks for one, away from the screen's own thread; runtime and weights are fetched for the first. */
self.onmessage = ({ data: { id, image, line } }: MessageEvent<Asked>) => {
  const work = line === null ? proposeLine(image, runFinder, runReader) : traceBead(image, line, runReader);
  work.then(
    (found) => self.postMessage({ id, found }),
    () => self.postMessage({ id, failed: true }),
  );
};
