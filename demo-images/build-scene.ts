import { createBead } from "./geometry/bead";
import { createHeightGrid, type HeightGrid } from "./field/height-grid";
import { paintBead } from "./field/paint-bead";
import { paintPlate } from "./field/paint-plate";
import type { SceneDraft } from "./imperfections/draft";
import { paintFault } from "./imperfections/paint-fault";
import { finishRelief } from "./materials/finish";
import {
  createCard,
  createDisc,
  createRule,
  createStrip,
  paintObject,
  type ScaleObject,
} from "./scale-objects";
import type { SceneSpec } from "./scene";

export interface BuiltScene {
  readonly spec: SceneSpec;
  readonly grid: HeightGrid;
  /** Heights after the beads and before any imperfection: where outlines lie. */
  readonly smooth: Float32Array;
  readonly draft: SceneDraft;
  readonly object: ScaleObject | null;
}

export function createScaleObject(kind: ScaleObject["kind"], sizeMm: number): ScaleObject {
  switch (kind) {
    case "rule":
      return createRule(sizeMm);
    case "card":
      return createCard();
    case "disc":
      return createDisc(sizeMm);
    case "strip":
      return createStrip();
  }
}

/** Makes the surface: plate, beads in the order laid, imperfections, and the scale object on top. */
export function buildScene(spec: SceneSpec, stepMm: number): BuiltScene {
  const grid = createHeightGrid(spec.area, stepMm);
  paintPlate(grid, spec.profile, finishRelief(spec.plate.finish, spec.plate.seed));
  const beads = spec.beads.map(createBead);
  for (const bead of beads) paintBead(grid, bead);
  const smooth = grid.h.slice();
  const draft: SceneDraft = { grid, profile: spec.profile, beads, records: [] };
  for (const fault of spec.faults) paintFault(draft, fault);
  let object: ScaleObject | null = null;
  if (spec.scaleObject !== null) {
    const { kind, side, placement, sizeMm } = spec.scaleObject;
    object = createScaleObject(kind, sizeMm);
    const facets = spec.profile.facets;
    const facet = side === "left" ? facets[0]! : facets[facets.length - 1]!;
    paintObject(grid, facet, object, placement);
  }
  return { spec, grid, smooth, draft, object };
}
