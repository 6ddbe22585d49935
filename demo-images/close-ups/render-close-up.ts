import { buildScene } from "../build-scene";
import { projectPoint } from "../camera/camera";
import { sampleHeight } from "../field/height-grid";
import { RenderParamsSchema } from "../params";
import { createSceneCamera, renderScene, resolveSpec, type RenderedScene } from "../render-scene";
import { closeUpScene, type CloseUp, type Severity } from "./close-up";

const SEED = 7;

const paramsOf = ({ scenario }: CloseUp, megapixels: number) =>
  ({ scenario, seed: SEED, megapixels, distortion: 0, noise: 1, defocus: 0.15 }) as const;

/** The picture of an imperfection from near, and its truth. */
export const renderCloseUp = (closeUp: CloseUp, severity: Severity, megapixels: number): RenderedScene =>
  renderScene(paramsOf(closeUp, megapixels), (spec) => closeUpScene(spec, closeUp, severity));

/** How bad it is in this scene, in the unit of what grows, and what share of its outline the picture holds; no picture is made. */
export function closeUpShown(
  closeUp: CloseUp,
  severity: Severity,
): { readonly size: number; readonly shareInSight: number } {
  const params = RenderParamsSchema.parse(paramsOf(closeUp, 0.17));
  const spec = closeUpScene(resolveSpec(params), closeUp, severity);
  const { draft, grid } = buildScene(spec, 0.16);
  const camera = createSceneCamera(spec, params);
  const mine = draft.records.filter(({ kind }) => kind === closeUp.id);
  const points = mine.flatMap(({ outline }) => outline);
  const seen = points.filter(([x, y]) => {
    const [px, py] = projectPoint(camera, [x, y, sampleHeight(grid, x, y)]);
    return px >= 0 && py >= 0 && px <= camera.widthPx && py <= camera.heightPx;
  });
  return {
    size: closeUp.grows(mine.map(({ sizes }) => sizes)),
    shareInSight: points.length === 0 ? 0 : seen.length / points.length,
  };
}
