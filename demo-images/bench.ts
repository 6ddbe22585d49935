import { renderScene, resolveSpec } from "./render-scene";
import { buildScene } from "./build-scene";
import type { SceneSpec } from "./scene";
import { RenderParamsSchema } from "./params";

/** How time grows with pixels and with imperfections: ratios to the smallest case of the same run. */
function secondsOf(work: () => unknown): number {
  const times = [0, 1, 2].map(() => {
    const start = performance.now();
    work();
    return (performance.now() - start) / 1000;
  });
  return Math.min(...times);
}

const scenario = "stringer-ropey";
renderScene({ scenario, megapixels: 0.1 });
const lines: string[] = [];
const pixelSteps = [0.25, 0.5, 1, 2];
const byPixels = pixelSteps.map((megapixels) =>
  secondsOf(() => renderScene({ scenario, megapixels, seed: 1 })),
);
pixelSteps.forEach((megapixels, i) => {
  const ratio = byPixels[i]! / byPixels[0]!;
  lines.push(`pixels x${megapixels / pixelSteps[0]!}: time x${ratio.toFixed(2)}`);
});

const spec = resolveSpec(RenderParamsSchema.parse({ scenario }));
const withSpatter = (count: number): SceneSpec => ({
  ...spec,
  faults: [{ kind: "spatter", count, medianMm: 0.8, spreadMm: 8, seed: 5 }],
});
const base = secondsOf(() => buildScene(withSpatter(50), 0.1));
for (const count of [50, 200, 800, 3200]) {
  const ratio = secondsOf(() => buildScene(withSpatter(count), 0.1)) / base;
  lines.push(`spatter balls x${count / 50}: time to build the surface x${ratio.toFixed(2)}`);
}
process.stdout.write(`${lines.join("\n")}\n`);
