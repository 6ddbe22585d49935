/** Fewer pixels than that along the longer side: a pore of 1 mm on a bead of 150 mm is less than six of them. Own estimate. */
const FEW_PX = 900;

/** What a photo is too small for, said where it is marked; null: it is large enough for a bead. */
export function smallPhotoSentence({
  widthPx,
  heightPx,
}: {
  readonly widthPx: number;
  readonly heightPx: number;
}): string | null {
  if (Math.max(widthPx, heightPx) >= FEW_PX) return null;
  return `A small photo, ${widthPx} × ${heightPx} pixels: fine pores, cracks and undercut may not be in it at all. Take it again at the camera’s full size if you can.`;
}
