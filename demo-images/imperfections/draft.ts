import type { ImperfectionId, Place, Stretch } from "@/lib/trade";
import { sampleHeight, type HeightGrid } from "../field/height-grid";
import type { Bead } from "../geometry/bead";
import type { Profile } from "../geometry/profile";
import type { PlateLook } from "../materials/plate-look";

export type PlanPoint = readonly [number, number];

/** One imperfection as put into the scene; turned into pixels by the truth once the surface is finished. */
export interface ImperfectionRecord {
  readonly kind: ImperfectionId;
  /** Plan coordinates, mm. */
  readonly outline: readonly PlanPoint[];
  /** True for an area, false for a line. */
  readonly closed: boolean;
  /** Names end in Mm, MmSquared, Deg or Count. */
  readonly sizes: Readonly<Record<string, number>>;
  readonly place: Place | null;
  readonly stretch: Stretch | null;
}

/** The scene while it is being made: effects are confined to its grid and its records. */
export interface SceneDraft {
  readonly grid: HeightGrid;
  /** Heights after the beads and before any imperfection: where outlines lie and whole beads are measured. */
  readonly smooth: Float32Array;
  readonly profile: Profile;
  readonly plate: PlateLook;
  /** Passes in the order laid; the last is the one in question. */
  readonly beads: readonly Bead[];
  readonly records: ImperfectionRecord[];
  /** True where the scale object lies, or comes within `reachMm`: what is under it cannot be seen and is not put there. */
  readonly isCovered: (xMm: number, yMm: number, reachMm: number) => boolean;
}

export const lastBead = (draft: SceneDraft): Bead => draft.beads[draft.beads.length - 1] as Bead;

/** Middle of the bead's face at x, plan y; the nominal middle beyond its ends. */
export function centreAt(bead: Bead, x: number): number {
  const toes = bead.toesAt(x);
  return toes === null ? (bead.shape.leftMm + bead.shape.rightMm) / 2 : (toes.leftMm + toes.rightMm) / 2;
}

/** A closed ring of plan points from radius by angle. */
export function ring(x: number, y: number, radiusAt: (angle: number) => number, count = 28): PlanPoint[] {
  return Array.from({ length: count }, (_, i): PlanPoint => {
    const a = (2 * Math.PI * i) / count;
    const r = radiusAt(a);
    return [x + r * Math.cos(a), y + r * Math.sin(a)];
  });
}

/** Plan millimetres across the weld per millimetre of the surface as it leans at a point, over `reachMm` either way. */
export function leanShare(draft: SceneDraft, x: number, y: number, reachMm: number): number {
  const grid = { ...draft.grid, h: draft.smooth };
  const slope = (sampleHeight(grid, x, y + reachMm) - sampleHeight(grid, x, y - reachMm)) / (2 * reachMm);
  return 1 / Math.hypot(1, slope);
}

/** A ring drawn on the leaning surface, as the plan sees it: squeezed across the weld by its lean. */
export function leaningRing(
  x: number,
  y: number,
  lean: number,
  radiusAt: (angle: number) => number,
  count = 28,
): PlanPoint[] {
  return ring(x, y, radiusAt, count).map(([px, py]): PlanPoint => [px, y + (py - y) * lean]);
}

/** Shoelace area, mm². */
export function outlineArea(outline: readonly PlanPoint[]): number {
  let twice = 0;
  outline.forEach(([x, y], i) => {
    const [nx, ny] = outline[(i + 1) % outline.length] as PlanPoint;
    twice += x * ny - nx * y;
  });
  return Math.abs(twice) / 2;
}
