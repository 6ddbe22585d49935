import type { Point } from "@/lib/geometry";
import { findSpots, proposeLine, spots, stationsOf, traceBead, type Pixels } from "@/lib/trace";
import type { Toes } from "@/lib/marks";
import { runFinder, runReader, runSpots } from "./trace-runtime";

interface Asked {
  readonly id: number;
  readonly image: Pixels;
  /** Where the bead runs; null: that is the question. */
  readonly line: readonly Point<"photo">[] | null;
  /** Holes and spatter are asked for, about a bead with these toes. */
  readonly about?: Toes;
}

/** Reads a bead, or looks for one or what lies about it, away from the screen's own thread; what that takes is fetched for the first. */
self.onmessage = ({ data: { id, image, line, about } }: MessageEvent<Asked>) => {
  answer(image, line, about).then(
    (found) => self.postMessage({ id, found }),
    () => self.postMessage({ id, failed: true }),
  );
};

function answer(image: Pixels, line: Asked["line"], about: Asked["about"]): Promise<unknown> {
  if (about !== undefined) return findSpots(image, stationsOf(about), runSpots, spots);
  return line === null ? proposeLine(image, runFinder, runReader) : traceBead(image, line, runReader);
}
