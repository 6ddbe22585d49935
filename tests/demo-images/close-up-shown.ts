import { buildScene } from "@/demo-images/build-scene";
import { projectPoint } from "@/demo-images/camera/camera";
import { closeUpScene, type CloseUp, type Severity } from "@/demo-images/close-ups/close-up";
import { closeUpParams } from "@/demo-images/close-ups/render-close-up";
import { sampleHeight } from "@/demo-images/field/height-grid";
import type { PlanPoint } from "@/demo-images/imperfections/draft";
import { RenderParamsSchema } from "@/demo-images/params";
import { createSceneCamera, resolveSpec } from "@/demo-images/render-scene";

/**
 * How bad it is in this scene, in the unit of what grows, and whether the picture is about it: its outlines lie in the
 * picture, or one of them, that of a whole bead, has the picture's middle inside. No picture is made.
 */
export function closeUpShown(
  closeUp: CloseUp,
  severity: Severity,
): { readonly size: number; readonly inSight: boolean } {
  const params = RenderParamsSchema.parse(closeUpParams(closeUp, 0.17));
  const spec = closeUpScene(resolveSpec(params), closeUp, severity);
  const { draft, grid } = buildScene(spec, 0.25);
  const camera = createSceneCamera(spec, params);
  const mine = draft.records.filter(({ kind }) => kind === closeUp.id);
  const isSeen = ([x, y]: PlanPoint): boolean => {
    const [px, py] = projectPoint(camera, [x, y, sampleHeight(grid, x, y)]);
    return px >= 0 && py >= 0 && px <= camera.widthPx && py <= camera.heightPx;
  };
  const points = mine.flatMap(({ outline }) => outline);
  const seen = points.filter(isSeen).length;
  return {
    size: closeUp.grows(mine.map(({ sizes }) => sizes)),
    inSight:
      seen >= Math.min(LEAST_SEEN, points.length / 2) ||
      mine.some(({ outline }) => encloses(outline, closeUp.at)),
  };
}

/** Points of an outline: a ring has 28, a crack a few dozen. */
const LEAST_SEEN = 10;

/** Whether a ring goes round a point of the plan: a ray from it crosses the ring an odd number of times. */
function encloses(ring: readonly PlanPoint[], [x, y]: PlanPoint): boolean {
  const crossings = ring.filter(([ax, ay], i) => {
    const [bx, by] = ring[(i + 1) % ring.length]!;
    return ay > y !== by > y && x < ax + ((y - ay) * (bx - ax)) / (by - ay);
  });
  return crossings.length % 2 === 1;
}
