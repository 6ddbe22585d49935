/** What light meets at one point; linear RGB, one object reused for speed. */
export interface SurfacePoint {
  /** Share of light scattered back without a mirror direction. */
  dr: number;
  dg: number;
  db: number;
  /** Mirror reflectance seen head on. */
  fr: number;
  fg: number;
  fb: number;
  /** Perceptual roughness 0 to 1; GGX alpha is its square. */
  rough: number;
}

export const createSurfacePoint = (): SurfacePoint => ({
  dr: 0,
  dg: 0,
  db: 0,
  fr: 0.04,
  fg: 0.04,
  fb: 0.04,
  rough: 0.5,
});

export interface Coat {
  readonly diffuse: readonly [number, number, number];
  readonly mirror: readonly [number, number, number];
  readonly rough: number;
}

/** Blends a coat over the point: 0 leaves it, 1 replaces it. */
export function coat(point: SurfacePoint, over: Coat, share: number): void {
  if (share <= 0) return;
  const t = share > 1 ? 1 : share;
  point.dr += (over.diffuse[0] - point.dr) * t;
  point.dg += (over.diffuse[1] - point.dg) * t;
  point.db += (over.diffuse[2] - point.db) * t;
  point.fr += (over.mirror[0] - point.fr) * t;
  point.fg += (over.mirror[1] - point.fg) * t;
  point.fb += (over.mirror[2] - point.fb) * t;
  point.rough += (over.rough - point.rough) * t;
}

/** Scales mirror and diffuse light by a colour. */
export function tintPoint(point: SurfacePoint, r: number, g: number, b: number, share: number): void {
  const kr = 1 + (r - 1) * share;
  const kg = 1 + (g - 1) * share;
  const kb = 1 + (b - 1) * share;
  point.dr *= kr;
  point.dg *= kg;
  point.db *= kb;
  point.fr *= kr;
  point.fg *= kg;
  point.fb *= kb;
}
