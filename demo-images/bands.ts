import { gatherBloom, spreadBloom, type BloomMap } from "./camera/bloom";
import type { Camera } from "./camera/camera";
import { developRows } from "./camera/develop";
import type { Development } from "./camera/development";
import { exposeRows, type Exposure } from "./camera/expose";
import { blurAcross } from "./camera/lens";
import { meterGain } from "./camera/meter";
import type { VisibleBlocks } from "./camera/visible-blocks";
import type { HeightGrid } from "./field/height-grid";
import type { CeilingMap } from "./field/ceiling-map";
import type { Profile } from "./geometry/profile";
import type { LightRig } from "./light/lamp";
import { lightRows } from "./light/light-field";
import type { OpennessMap } from "./light/openness";
import { createBench, type Bench } from "./materials/bench";
import type { SurfaceLook } from "./materials/surface-material";

/** All that lighting, tracing and developing need, as plain data and shared memory, so that any thread can do any rows. */
export interface BandJob {
  readonly grid: HeightGrid;
  readonly profile: Profile;
  readonly look: SurfaceLook;
  readonly rig: LightRig;
  readonly openness: OpennessMap;
  readonly ceiling: CeilingMap;
  readonly visible: VisibleBlocks;
  readonly camera: Camera;
  readonly bench: Bench;
  readonly benchSeed: number;
  readonly thicknessMm: number;
  readonly samples: number;
  readonly radiance: Float32Array;
  readonly exposure: Exposure;
  readonly development: Development;
  readonly bloom: BloomMap;
  /** One number, shared: the exposure the meter chose once all rows were traced. */
  readonly gain: Float64Array;
  readonly rgb: Uint8Array;
}

/** In this order; a phase starts when all rows of the one before are done. */
export const bandPhases = ["light", "expose", "bloom", "across", "develop"] as const;
export type BandPhase = (typeof bandPhases)[number];

/** How many rows a phase goes over: rows of the grid, of the bloom map or of the picture; 0 where it has nothing to do. */
export function bandRows(job: BandJob, phase: BandPhase): number {
  if (phase === "light") return job.grid.ny;
  if (phase === "bloom") return job.development.bloom > 0 ? job.bloom.ny : 0;
  return job.camera.heightPx;
}

/** Does rows `from` to `to` (half-open). Every row depends on the job alone: how rows are shared out changes nothing. */
export function runBand(job: BandJob, phase: BandPhase, from: number, to: number): void {
  const { exposure, development } = job;
  switch (phase) {
    case "light": {
      const { grid, profile, look, rig, openness, visible, camera, radiance } = job;
      lightRows({ grid, profile, look, rig, openness, visible, eye: camera.position }, radiance, from, to);
      return;
    }
    case "expose": {
      const { camera, grid, ceiling, radiance, rig, profile, thicknessMm, samples } = job;
      const bench = createBench(job.bench, job.benchSeed);
      const input = { camera, grid, ceiling, radiance, rig, up: profile.up, bench, thicknessMm, samples };
      exposeRows(input, exposure, from, to);
      return;
    }
    case "bloom":
      gatherBloom(job.bloom, exposure, development, 1.4 / job.gain[0]!, from, to);
      return;
    case "across":
      blurAcross(exposure, development, from, to);
      return;
    case "develop":
      developRows(exposure, job.bloom, development, job.gain[0]!, job.rgb, from, to);
  }
}

/** What one thread does alone after all rows of a phase. */
export function closePhase(job: BandJob, phase: BandPhase): void {
  const { widthPx, heightPx, exposureEv, bloom } = job.development;
  if (phase === "expose") job.gain[0] = meterGain(job.exposure.rgb, widthPx, heightPx, exposureEv);
  if (phase === "bloom" && bloom > 0) spreadBloom(job.bloom);
}
