import { describe, expect, it } from "vitest";
import { projectPoint, scenarioNames } from "@/demo-images";
import { buildScene } from "@/demo-images/build-scene";
import { RenderParamsSchema } from "@/demo-images/params";
import { createSceneCamera, resolveSpec } from "@/demo-images/render-scene";
import { objectPlane, placedPoint } from "@/demo-images/scale-objects";
import { pointOnPlane } from "@/demo-images/camera/camera";

describe("the scale object of every scenario", () => {
  it.each(scenarioNames)("lies wholly on its plate and in the picture of %s", (scenario) => {
    const params = RenderParamsSchema.parse({ scenario, seed: 7 });
    const spec = resolveSpec(params);
    const camera = createSceneCamera(spec, params);
    const { object } = buildScene({ ...spec, faults: [] }, 2);
    const placed = spec.scaleObject!;
    const facets = spec.profile.facets;
    const facet = placed.side === "left" ? facets[0]! : facets[facets.length - 1]!;
    const top = objectPlane(facet, object!);
    for (const [sa, sb] of [
      [-0.5, -0.5],
      [0.5, -0.5],
      [0.5, 0.5],
      [-0.5, 0.5],
    ] as const) {
      const [u, v] = placedPoint(placed.placement, sa * object!.lengthMm, sb * object!.widthMm);
      const point = pointOnPlane(top, u, v);
      expect(point[0]).toBeGreaterThan(spec.area.x0 + 1);
      expect(point[0]).toBeLessThan(spec.area.x1 - 1);
      expect(point[1]).toBeGreaterThan(spec.area.y0 + 1);
      expect(point[1]).toBeLessThan(spec.area.y1 - 1);
      const [x, y] = projectPoint(camera, point);
      expect(x).toBeGreaterThan(0);
      expect(x).toBeLessThan(camera.widthPx);
      expect(y).toBeGreaterThan(0);
      expect(y).toBeLessThan(camera.heightPx);
    }
  });
});
