import type { Point } from "@/lib/geometry";
import { peaksOf, withoutDoubles, type SpotPeak } from "./spot-peaks";
import { sampleTile, spotScale, tilesOver } from "./spot-tiles";
import { besideBead, isInZone } from "./spot-zone";
import type { Pixels, ReadTile, TraceStation } from "./types";

/** A hole or a ball of spatter that may be there, in photo pixels. It is no mark before a person makes it one. */
export interface Spot {
  readonly kind: "hole" | "spatter";
  readonly at: Point<"photo">;
  readonly radiusPx: number;
  /** 0 to 1; it ranks, and is no chance of being right. */
  readonly sure: number;
}

/** What is suggested, of what the network answered. */
export interface SpotRule {
  readonly holeFrom: number;
  readonly spatterFrom: number;
  /** Across, in pixels as they were read (`spotScale`). */
  readonly leastAcrossPx: number;
}

/**
 * Holes between the toes, and spatter on and beside the bead, at the scale the network was trained at. What is not found
 * may be there all the same.
 */
export async function findSpots(
  image: Pixels,
  stations: readonly TraceStation[],
  readTile: ReadTile,
  rule: SpotRule,
): Promise<readonly Spot[]> {
  if (stations.length === 0) return [];
  const widthPx = usualWidth(stations);
  const scale = spotScale(widthPx);
  const beside = besideBead(stations, widthPx);
  const leastSure = Math.min(rule.holeFrom, rule.spatterFrom);
  const peaks: SpotPeak[] = [];
  for (const tile of tilesOver(image, widthPx, beside)) {
    const answer = await readTile(sampleTile(image, tile, scale));
    for (const peak of peaksOf(answer, leastSure))
      peaks.push({ ...peak, x: peak.x + tile.x, y: peak.y + tile.y });
  }
  return withoutDoubles(peaks)
    .filter(({ kind, sure }) => sure >= (kind === "hole" ? rule.holeFrom : rule.spatterFrom))
    .filter(({ radius }) => 2 * radius >= rule.leastAcrossPx)
    .map(({ kind, x, y, radius, sure }): Spot => ({
      kind,
      at: { x: x / scale, y: y / scale },
      radiusPx: radius / scale,
      sure,
    }))
    .filter(
      ({ kind, at }) =>
        at.x >= 0 && at.y >= 0 && at.x <= image.width && at.y <= image.height && isInZone(kind, beside(at)),
    );
}

/** The median of the stations' widths, photo pixels. */
export function usualWidth(stations: readonly TraceStation[]): number {
  const widths = stations.map(({ widthPx }) => widthPx).sort((a, b) => a - b);
  return widths[widths.length >> 1] ?? 0;
}
