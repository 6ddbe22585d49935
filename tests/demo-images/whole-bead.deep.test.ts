import { describe, expect, it } from "vitest";
import { buildScene, type BuiltScene } from "@/demo-images/build-scene";
import { sampleHeight } from "@/demo-images/field/height-grid";
import { RenderParamsSchema } from "@/demo-images/params";
import { resolveSpec } from "@/demo-images/render-scene";
import type { ScenarioName } from "@/demo-images";
import type { ImperfectionId } from "@/lib/trade";

const STEP_MM = 0.15;
const build = (scenario: ScenarioName, seed: number): BuiltScene =>
  buildScene(resolveSpec(RenderParamsSchema.parse({ scenario, seed })), STEP_MM);

const sizesOf = (scene: BuiltScene, kind: ImperfectionId): Readonly<Record<string, number>> =>
  scene.draft.records.find((record) => record.kind === kind)!.sizes;

/** The middle four fifths of the last bead, a place every half millimetre. */
function places(scene: BuiltScene): number[] {
  const { startMm, endMm } = scene.draft.beads.at(-1)!.shape;
  const count = Math.floor((0.6 * (endMm - startMm)) / 0.5);
  return Array.from({ length: count }, (_, i) => startMm + 0.2 * (endMm - startMm) + i * 0.5);
}

const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;

/** Found in the height field by a look across it that knows nothing of toes. */
const crests = (scene: BuiltScene, reachMm: number): number[] =>
  places(scene).map((x) => {
    const across = Array.from({ length: 161 }, (_, i) =>
      sampleHeight({ ...scene.grid, h: scene.draft.smooth }, x, -reachMm + (i * reachMm) / 80),
    );
    return Math.max(...across);
  });

describe("sizes of whole-bead imperfections are those of the bead that was laid", () => {
  it.each([1, 2, 3])("height of a convex bead on flat plate, seed %d", (seed) => {
    const scene = build("stringer-ropey", seed);
    const crest = mean(crests(scene, 6));
    // The crest of each cut lies over the face's middle by part of a ripple (0.24 mm), never under it.
    const { heightMm } = sizesOf(scene, "convex-bead");
    expect(crest - heightMm!).toBeGreaterThan(-0.02);
    expect(crest - heightMm!).toBeLessThan(0.3);
  });

  it("differ from seed to seed, as laid beads do", () => {
    const widths = [1, 2, 3, 4].map((seed) => sizesOf(build("stringer-ropey", seed), "convex-bead").widthMm!);
    expect(new Set(widths.map((w) => w.toFixed(2))).size).toBeGreaterThan(2);
  });

  it.each([1, 2])("step between the plates and depth of underfill, seed %d", (seed) => {
    const scene = build("groove-underfill", seed);
    const grid = { ...scene.grid, h: scene.draft.smooth };
    const step = mean(places(scene).map((x) => sampleHeight(grid, x, 12) - sampleHeight(grid, x, -12)));
    expect(sizesOf(scene, "misalignment").stepMm).toBeCloseTo(step, 1);
    // Half of the step is the height of the line between the plates' edges over the joint's middle.
    const deepest = Math.max(...places(scene).map((x) => step / 2 - sampleHeight(grid, x, 0)));
    expect(Math.abs(sizesOf(scene, "underfill").depthMm! - deepest)).toBeLessThan(0.25);
  });

  it.each([1, 2, 3])("how far a bead wanders, by its crest line, seed %d", (seed) => {
    const scene = build("poor-start-arc-strike", seed);
    const grid = { ...scene.grid, h: scene.draft.smooth };
    // Middle of what stands more than half a millimetre over the plate.
    const middles = places(scene).map((x) => {
      const ys = Array.from({ length: 241 }, (_, i) => -12 + i * 0.1).filter(
        (y) => sampleHeight(grid, x, y) > 0.5,
      );
      return (Math.min(...ys) + Math.max(...ys)) / 2;
    });
    const spread = (Math.max(...middles) - Math.min(...middles)) / 2;
    const { amplitudeMm } = sizesOf(scene, "wandering");
    expect(amplitudeMm!).toBeGreaterThan(0.5 * spread);
    expect(amplitudeMm!).toBeLessThan(2 * spread + 0.5);
  });

  it("a restart stands higher than the rest of its bead, and a start that was a lump too", () => {
    const restart = sizesOf(build("restart-cluster", 7), "poor-start");
    expect(restart.heightMm! - restart.usualHeightMm!).toBeGreaterThan(0.6);
    const start = sizesOf(build("poor-start-arc-strike", 7), "poor-start");
    expect(start.heightMm!).toBeGreaterThan(start.usualHeightMm!);
  });
});
