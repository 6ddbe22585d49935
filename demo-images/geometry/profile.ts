/**
 * The joint before welding, cut across the weld: a chain of straight facets z(y), the same all along x.
 * Plan frame: x along the weld in the direction of travel, y across it, z towards the viewer, all in mm.
 * A T-joint is turned so that the viewer looks into the corner: both plates rise from it at 45 degrees.
 */
export interface Facet {
  readonly name: string;
  readonly y0: number;
  readonly z0: number;
  readonly y1: number;
  readonly z1: number;
  /** False for a cut edge or bevel, which carries no mill scale. */
  readonly rolled: boolean;
}

export interface Profile {
  readonly facets: readonly Facet[];
  /** Unit vector, in the plan frame, that points up in the workshop. */
  readonly up: readonly [number, number, number];
}

/** Height of the joint at y, mm; the outermost facets go on for ever. */
export function profileHeight(profile: Profile, y: number): number {
  const facet = facetAt(profile, y);
  return facet.z0 + ((y - facet.y0) * (facet.z1 - facet.z0)) / (facet.y1 - facet.y0);
}

export function facetAt(profile: Profile, y: number): Facet {
  const last = profile.facets[profile.facets.length - 1] as Facet;
  return profile.facets.find((facet) => y < facet.y1) ?? last;
}

/** Distance walked over the surface from y = 0 to y, mm: the plate's own coordinate across the weld. */
export function surfaceDistance(profile: Profile, y: number): number {
  const sign = y < 0 ? -1 : 1;
  const low = Math.min(0, y);
  const high = Math.max(0, y);
  let walked = 0;
  for (const facet of profile.facets) {
    const from = Math.max(low, facet === profile.facets[0] ? -Infinity : facet.y0);
    const isLast = facet === profile.facets[profile.facets.length - 1];
    const to = Math.min(high, isLast ? Infinity : facet.y1);
    if (to <= from) continue;
    walked += (to - from) * Math.hypot(1, (facet.z1 - facet.z0) / (facet.y1 - facet.y0));
  }
  return sign * walked;
}

const HALF = 400;
const flatUp = [0, 0, 1] as const;

export function flatProfile(): Profile {
  return { facets: [{ name: "plate", y0: -HALF, z0: 0, y1: HALF, z1: 0, rolled: true }], up: flatUp };
}

/** Lower sheet at z = 0 for y < 0; the upper sheet's cut edge stands at y = 0. */
export function lapProfile(thicknessMm: number): Profile {
  return {
    facets: [
      { name: "lower-plate", y0: -HALF, z0: 0, y1: 0, z1: 0, rolled: true },
      { name: "edge", y0: 0, z0: 0, y1: 0.08, z1: thicknessMm, rolled: false },
      { name: "upper-plate", y0: 0.08, z0: thicknessMm, y1: HALF, z1: thicknessMm, rolled: true },
    ],
    up: flatUp,
  };
}

/** Corner at the origin, lower plate towards -y, upright towards +y, both seen at 45 degrees. */
export function teeProfile(): Profile {
  const r = Math.SQRT1_2;
  return {
    facets: [
      { name: "lower-plate", y0: -HALF, z0: HALF, y1: 0, z1: 0, rolled: true },
      { name: "upright", y0: 0, z0: 0, y1: HALF, z1: HALF, rolled: true },
    ],
    up: [0, r, r],
  };
}

/** Two plates falling away from an outer edge at 45 degrees each. */
export function outsideCornerProfile(): Profile {
  return {
    facets: [
      { name: "left-plate", y0: -HALF, z0: -HALF, y1: 0, z1: 0, rolled: true },
      { name: "right-plate", y0: 0, z0: 0, y1: HALF, z1: -HALF, rolled: true },
    ],
    up: flatUp,
  };
}

export interface GrooveShape {
  readonly thicknessMm: number;
  readonly rootGapMm: number;
  /** Between the two bevels; 0 is a square butt. */
  readonly includedAngleDeg: number;
  /** How far the right-hand plate stands above the left, mm. */
  readonly stepMm?: number;
  /** How far the right-hand plate is pulled up out of the left one's plane, degrees. */
  readonly tiltDeg?: number;
}

/** A groove whose bottom (backing, or the dark bench below an open root) lies at -thickness. */
export function grooveProfile(shape: GrooveShape): Profile {
  const root = shape.rootGapMm / 2;
  const bevel = shape.thicknessMm * Math.tan((shape.includedAngleDeg * Math.PI) / 360);
  const top = root + Math.max(bevel, 0.08);
  const t = shape.thicknessMm;
  const step = shape.stepMm ?? 0;
  const pulled = HALF * Math.tan(((shape.tiltDeg ?? 0) * Math.PI) / 180);
  return {
    facets: [
      { name: "left-plate", y0: -HALF, z0: 0, y1: -top, z1: 0, rolled: true },
      { name: "left-bevel", y0: -top, z0: 0, y1: -root, z1: -t, rolled: false },
      { name: "root", y0: -root, z0: -t, y1: root, z1: -t, rolled: true },
      { name: "right-bevel", y0: root, z0: -t, y1: top, z1: step, rolled: false },
      { name: "right-plate", y0: top, z0: step, y1: HALF, z1: step + pulled, rolled: true },
    ],
    up: flatUp,
  };
}
