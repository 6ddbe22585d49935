import { projectPoint, type RenderedScene } from "@/demo-images";
import type { Point } from "@/lib/geometry";

/** A phone's photo of 12 megapixels. */
const PHOTO_WIDTH_PX = 4000;

/**
 * The plate on which the scale object lies: its own mm (u along the weld, v across, h above) to photo pixels, exactly.
 * Pictures are rendered small; a person marks the photo of which that picture is the preview, so places are enlarged to it.
 */
export interface SceneFrame {
  /** Width and height of the photo that the person marks, px. */
  readonly size: { readonly widthPx: number; readonly heightPx: number };
  /** Photo pixels per pixel of the picture as rendered. */
  readonly enlarged: number;
  readonly shoot: (u: number, v: number, h: number) => Point;
  readonly inView: (points: readonly Point[]) => boolean;
  /** Angle of the camera's axis to the plate's normal. */
  readonly tiltDeg: number;
}

export function sceneFrame({
  truth,
  width,
  height,
}: Pick<RenderedScene, "truth" | "width" | "height">): SceneFrame {
  const plane = truth.planes.find(({ name }) => name === truth.scaleObject?.plane);
  if (plane === undefined) throw new Error(`${truth.scenario}: the scale object lies on no plate`);
  const { origin, alongU, alongV } = plane;
  const normal = [
    alongU[1] * alongV[2] - alongU[2] * alongV[1],
    alongU[2] * alongV[0] - alongU[0] * alongV[2],
    alongU[0] * alongV[1] - alongU[1] * alongV[0],
  ] as const;
  const enlarged = PHOTO_WIDTH_PX / width;
  const size = { widthPx: PHOTO_WIDTH_PX, heightPx: height * enlarged };
  const axis = truth.camera.forward;
  const cosine = -(axis[0] * normal[0] + axis[1] * normal[1] + axis[2] * normal[2]);
  return {
    size,
    enlarged,
    shoot: (u, v, h) => {
      const at = (i: 0 | 1 | 2): number => origin[i] + u * alongU[i] + v * alongV[i] + h * normal[i];
      const [x, y] = projectPoint(truth.camera, [at(0), at(1), at(2)]);
      return { x: enlarged * x, y: enlarged * y };
    },
    inView: (points) =>
      points.every(({ x, y }) => x > 1 && y > 1 && x < size.widthPx - 1 && y < size.heightPx - 1),
    tiltDeg: (Math.acos(Math.min(1, cosine)) * 180) / Math.PI,
  };
}
