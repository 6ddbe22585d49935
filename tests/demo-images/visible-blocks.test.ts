import { describe, expect, it } from "vitest";
import { buildScene } from "@/demo-images/build-scene";
import { createVisibleBlocks } from "@/demo-images/camera/visible-blocks";
import { createUndistorter } from "@/demo-images/camera/undistort";
import { createCeilingMap } from "@/demo-images/field/ceiling-map";
import { createRayCaster, createRayHit } from "@/demo-images/field/ray-hit";
import { RenderParamsSchema, type RenderParamsInput } from "@/demo-images/params";
import { createSceneCamera, resolveSpec } from "@/demo-images/render-scene";

/** Share of blocks that get light, and how often a ray of the picture would read one that does not. */
function look(input: RenderParamsInput): { readonly share: number; readonly missed: number } {
  const params = RenderParamsSchema.parse(input);
  const spec = resolveSpec(params);
  const camera = createSceneCamera(spec, params);
  const { grid } = buildScene(spec, 0.25);
  const { seen, nx, block } = createVisibleBlocks(grid, camera);
  const cast = createRayCaster(grid, createCeilingMap(grid), camera.position, spec.thicknessMm);
  const undistort = createUndistorter(camera);
  const [hit, c] = [createRayHit(), new Float64Array(2)];
  const { right: r, down: d, forward: f } = camera;
  let missed = 0;
  for (let y = 0; y <= camera.heightPx; y += 2)
    for (let x = 0; x <= camera.widthPx; x += 2) {
      undistort(x, y, c);
      const towards = [0, 1, 2].map((i) => r[i]! * c[0]! + d[i]! * c[1]! + f[i]!);
      cast(hit, towards[0]!, towards[1]!, towards[2]!);
      if (hit.kind !== "field") continue;
      for (const [di, dj] of [
        [0, 0],
        [1, 0],
        [0, 1],
        [1, 1],
      ] as const) {
        const bi = ((hit.fx | 0) + di) / block;
        const bj = ((hit.fy | 0) + dj) / block;
        if (seen[(bj | 0) * nx + (bi | 0)] === 0) missed++;
      }
    }
  return { share: seen.reduce((sum, v) => sum + v, 0) / seen.length, missed };
}

describe("only what the camera can see is lit", () => {
  const close = { distanceMm: 140, fieldWidthMm: 40, megapixels: 0.1 } as const;

  it.each([
    { scenario: "tee-undercut", ...close },
    { scenario: "stringer-ropey", ...close, tiltDeg: 50, azimuthDeg: 140, distortion: 0.15 },
    { scenario: "lap-cold-lap", ...close, tiltDeg: 35, azimuthDeg: -60, rollDeg: 120, distortion: -0.15 },
  ] as const)("in a close look at $scenario, and nothing that a ray reads is left dark", (input) => {
    const { share, missed } = look(input);
    expect(missed).toBe(0);
    expect(share).toBeLessThan(0.6);
  });
});
