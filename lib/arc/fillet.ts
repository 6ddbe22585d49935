/** Leg of an equal-leg flat fillet, mm, from its area, mm². */
export function legFromAreaMm(areaMm2: number): number {
  return Math.sqrt(2 * areaMm2);
}

/** Area of an equal-leg flat fillet, mm². */
export function areaFromLegMm2(legMm: number): number {
  return legMm ** 2 / 2;
}

/** Leg of an equal-leg fillet from the face width, mm. */
export function legFromFaceMm(faceMm: number): number {
  return faceMm / Math.SQRT2;
}
