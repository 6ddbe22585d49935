/** Leg of an equal-leg flat fillet, mm, from its area, mm². */
export function legFromAreaMm(areaMm2: number): number {
  return Math.sqrt(2 * areaMm2);
}

/** Area of an equal-leg flat fillet, mm². */
export function areaFromLegMm2(legMm: number): number {
  return legMm ** 2 / 2;
}

/** Theoretical throat of an equal-leg fillet, mm. */
export function throatFromLegMm(legMm: number): number {
  return legMm / Math.SQRT2;
}

/** Face width (toe to toe) of an equal-leg fillet, mm: all that a photo from above can show. */
export function faceFromLegMm(legMm: number): number {
  return legMm * Math.SQRT2;
}

/** Leg of an equal-leg fillet from the face width, mm. */
export function legFromFaceMm(faceMm: number): number {
  return faceMm / Math.SQRT2;
}

/** Area of a cap of given width and height, mm²: parabola, 2/3·w·h. */
export function parabolicCapMm2(widthMm: number, heightMm: number): number {
  return (2 / 3) * widthMm * heightMm;
}

/** Area of a circular cap of given width and height, mm². The height may not exceed half the width: NaN. */
export function circularCapMm2(widthMm: number, heightMm: number): number {
  if (heightMm === 0) return 0;
  if (!(heightMm > 0) || heightMm > widthMm / 2) return NaN;
  const radius = (widthMm ** 2 / 4 + heightMm ** 2) / (2 * heightMm);
  const half = Math.asin(widthMm / (2 * radius));
  return radius ** 2 * (half - Math.sin(half) * Math.cos(half));
}
