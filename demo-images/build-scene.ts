import { createBead } from "./geometry/bead";
import type { Facet } from "./geometry/profile";
import { createHeightGrid, type HeightGrid } from "./field/height-grid";
import { paintBead } from "./field/paint-bead";
import { paintPlate } from "./field/paint-plate";
import type { SceneDraft } from "./imperfections/draft";
import { paintFault } from "./imperfections/paint-fault";
import { finishRelief } from "./materials/finish";
import {
  createCard,
  createCoverTest,
  createDisc,
  createRule,
  createStrip,
  paintObject,
  type Placement,
  type ScaleObject,
} from "./scale-objects";
import type { SceneSpec } from "./scene";
import { paintStreet } from "./street/paint-street";

export interface BuiltScene {
  readonly spec: SceneSpec;
  readonly grid: HeightGrid;
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

interface PlacedObject {
  readonly object: ScaleObject;
  readonly facet: Facet;
  readonly placement: Placement;
}

function placeObject(spec: SceneSpec): PlacedObject | null {
  if (spec.scaleObject === null) return null;
  const { kind, side, placement, sizeMm } = spec.scaleObject;
  const facets = spec.profile.facets;
  const facet = side === "left" ? facets[0]! : facets[facets.length - 1]!;
  return { object: createScaleObject(kind, sizeMm), facet, placement };
}

/** Makes the surface: plate, beads in the order laid, imperfections, and the scale object on top. */
export function buildScene(spec: SceneSpec, stepMm: number): BuiltScene {
  const grid = createHeightGrid(spec.area, stepMm);
  paintPlate(grid, spec.profile, finishRelief(spec.plate));
  const beads = spec.beads.map(createBead);
  for (const bead of beads) paintBead(grid, bead);
  const placed = placeObject(spec);
  const draft: SceneDraft = {
    grid,
    smooth: grid.h.slice(),
    profile: spec.profile,
    plate: spec.plate,
    beads,
    records: [],
    isCovered: placed === null ? () => false : createCoverTest(placed.facet, placed.object, placed.placement),
  };
  if (spec.street !== undefined) paintStreet(draft, spec.street);
  for (const fault of spec.faults) paintFault(draft, fault);
  if (placed !== null) paintObject(grid, placed.facet, placed.object, placed.placement);
  return { spec, grid, draft, object: placed?.object ?? null };
}
