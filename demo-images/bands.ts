import type { Camera } from "./camera/camera";
import { exposeRows, type Exposure } from "./camera/expose";
import type { HeightGrid } from "./field/height-grid";
import type { CeilingMap } from "./field/ray-hit";
import type { Profile } from "./geometry/profile";
import type { LightRig } from "./light/lamp";
import { lightRows } from "./light/light-field";
import type { OpennessMap } from "./light/openness";
import { createBench, type Bench } from "./materials/bench";
import type { SurfaceLook } from "./materials/surface-material";

/** All that lighting and tracing need, as plain data and shared memory, so that any thread can do any rows. */
export interface BandJob {
  readonly grid: HeightGrid;
  readonly profile: Profile;
  readonly look: SurfaceLook;
  readonly rig: LightRig;
  readonly openness: OpennessMap;
  readonly ceiling: CeilingMap;
  readonly camera: Camera;
  readonly bench: Bench;
  readonly benchSeed: number;
  readonly thicknessMm: number;
  readonly samples: number;
  readonly radiance: Float32Array;
  readonly exposure: Exposure;
}

/** "light" goes over rows of the grid, "expose" over rows of the picture; all light comes before any exposure. */
export type BandPhase = "light" | "expose";

export const bandRows = (job: BandJob, phase: BandPhase): number =>
  phase === "light" ? job.grid.ny : job.camera.heightPx;

/** Does rows `from` to `to` (half-open). Every row depends on the job alone: how rows are shared out changes nothing. */
export function runBand(job: BandJob, phase: BandPhase, from: number, to: number): void {
  const { grid, profile, look, rig, openness, camera, radiance } = job;
  if (phase === "light") {
    lightRows({ grid, profile, look, rig, openness, eye: camera.position }, radiance, from, to);
    return;
  }
  const bench = createBench(job.bench, job.benchSeed);
  const { ceiling, thicknessMm, samples, exposure } = job;
  exposeRows(
    { camera, grid, ceiling, radiance, rig, up: profile.up, bench, thicknessMm, samples },
    exposure,
    from,
    to,
  );
}
