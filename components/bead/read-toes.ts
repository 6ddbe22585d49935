import type { Result } from "@/lib/base";
import type { Point } from "@/lib/geometry";
import type { Toes } from "@/lib/marks";
import { isGuess, stationsOf, toesOf, type Spot, type TraceIssue } from "@/lib/trace";
import { askForLine, askForSpots, askForTrace } from "./ask-reader";
import { photoPixels } from "./photo-pixels";

interface ReadPhoto {
  readonly url: string;
  readonly widthPx: number;
}

/** Both toes along the weld line, in the drawing's pixels, or why they cannot be read. Throws when nothing answers. */
export async function readToes(
  photo: ReadPhoto,
  weldLine: readonly Point<"photo">[],
): Promise<Result<Toes, TraceIssue>> {
  const image = await photoPixels(photo.url);
  const factor = photo.widthPx / image.width;
  const line = weldLine.map(({ x, y }) => ({ x: x / factor, y: y / factor }));
  const found = await askForTrace(image, line);
  if (!found.ok) return found;
  const toes = toesOf(found.value);
  return { ok: true, value: grown(toes, factor) };
}

function grown(toes: Toes, factor: number): Toes {
  const all = (list: Toes["upper"]): Toes["upper"] =>
    list.map((p) => ({ ...p, x: p.x * factor, y: p.y * factor, sigmaPx: p.sigmaPx * factor }));
  return { ...toes, upper: all(toes.upper), lower: all(toes.lower) };
}

/**
 * What may be holes and spatter about accepted toes, in the drawing's pixels; null where those are a guess as a whole. Throws
 * when nothing answers.
 */
export async function lookForSpots(photo: ReadPhoto, toes: Toes): Promise<readonly Spot[] | null> {
  if (isGuess(stationsOf(toes))) return null;
  const image = await photoPixels(photo.url);
  const factor = photo.widthPx / image.width;
  const found = await askForSpots(image, grown(toes, 1 / factor));
  return found.map((spot) => ({
    ...spot,
    at: { x: spot.at.x * factor, y: spot.at.y * factor },
    radiusPx: spot.radiusPx * factor,
  }));
}

/** A weld line in the drawing's pixels, or why none is proposed. Throws when nothing answers. */
export async function lookForLine(photo: ReadPhoto): Promise<Result<readonly Point<"photo">[], TraceIssue>> {
  const image = await photoPixels(photo.url);
  const factor = photo.widthPx / image.width;
  const found = await askForLine(image);
  if (!found.ok) return found;
  const points = found.value.points.map(({ x, y }) => ({
    x: Math.round(10 * x * factor) / 10,
    y: Math.round(10 * y * factor) / 10,
  }));
  return { ok: true, value: points };
}
