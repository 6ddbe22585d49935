import { surfaceDistance } from "../geometry/profile";
import { createStainlessOxide, VISIBLE_OXIDE } from "../materials/stainless-oxide";
import { lastBead, type PlanPoint, type SceneDraft } from "./draft";

const STEP_MM = 0.1;
/** Directions walked about each end of the bead, from one side round to the other. */
const END_RAYS = 11;

type Walk = (from: PlanPoint, dx: number, dy: number) => PlanPoint | null;

/** Walks from the bead outwards until the colour is gone; null where it runs off the plate first. */
function createWalk({ grid, plate, profile }: SceneDraft): Walk {
  const oxideAt = createStainlessOxide(plate);
  return ([x0, y0], dx, dy) => {
    for (let d = STEP_MM; ; d += STEP_MM) {
      const [x, y] = [x0 + d * dx, y0 + d * dy];
      const i = Math.round((x - grid.x0) / grid.stepMm);
      const j = Math.round((y - grid.y0) / grid.stepMm);
      if (i < 0 || j < 0 || i >= grid.nx || j >= grid.ny) return null;
      const heat = grid.mask.heat[j * grid.nx + i]!;
      if (heat === 0 || oxideAt(x, surfaceDistance(profile, y), heat) < VISIBLE_OXIDE) return [x, y];
    }
  };
}

/** The two sides of the band, and how far each place of them lies from its toe over the plate, mm. */
function walkSides(draft: SceneDraft, walk: Walk): { sides: PlanPoint[][]; reaches: number[] } {
  const bead = lastBead(draft);
  const half = (bead.shape.rightMm - bead.shape.leftMm) / 2;
  const sides: PlanPoint[][] = [[], []];
  const reaches: number[] = [];
  for (let x = bead.shape.startMm + half; x <= bead.shape.endMm - half; x += 1) {
    const toes = bead.toesAt(x);
    if (toes === null) continue;
    [toes.leftMm, toes.rightMm].forEach((toe, side) => {
      const edge = walk([x, toe], 0, side === 0 ? -1 : 1);
      if (edge === null) return;
      sides[side]!.push(edge);
      reaches.push(Math.abs(surfaceDistance(draft.profile, edge[1]) - surfaceDistance(draft.profile, toe)));
    });
  }
  return { sides, reaches };
}

function walkEnd(draft: SceneDraft, walk: Walk, end: 1 | -1): PlanPoint[] {
  const { startMm, endMm, leftMm, rightMm } = lastBead(draft).shape;
  const half = (rightMm - leftMm) / 2;
  const from: PlanPoint = [end < 0 ? startMm + half : endMm - half, (leftMm + rightMm) / 2];
  return Array.from({ length: END_RAYS }, (_, i) => {
    const turn = (Math.PI * (i + 1)) / (END_RAYS + 1);
    const [dx, dy] = [end * Math.sin(turn), -end * Math.cos(turn)];
    return walk([from[0] + half * dx, from[1] + half * dy], dx, dy);
  }).filter((edge) => edge !== null);
}

/** The temper colour beside and about the last bead, out to where the colour on the plate can no longer be seen. */
export function recordTemperColour(draft: SceneDraft): void {
  const walk = createWalk(draft);
  const { sides, reaches } = walkSides(draft, walk);
  draft.records.push({
    kind: "temper-colour",
    outline: [...sides[0]!, ...walkEnd(draft, walk, 1), ...sides[1]!.reverse(), ...walkEnd(draft, walk, -1)],
    closed: true,
    sizes: {
      reachMm: reaches.reduce((sum, reach) => sum + reach, 0) / reaches.length,
      mostReachMm: Math.max(...reaches),
    },
    place: "beside",
    stretch: "whole-length",
  });
}
