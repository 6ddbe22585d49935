import { forEachPoint, raiseMask } from "../field/height-grid";
import { surfaceDistance } from "../geometry/profile";
import { fractalNoise1, smoothstep } from "../noise/noise";
import { lastBead, type PlanPoint, type SceneDraft } from "./draft";

export interface UndercutOptions {
  readonly side: "left" | "right";
  readonly fromMm: number;
  readonly toMm: number;
  readonly depthMm: number;
  /** Across the plate's own surface, mm. */
  readonly widthMm: number;
  /** 0 continuous, 1 in separate bites. */
  readonly broken: number;
  readonly seed: number;
}

/** A groove in the plate just outside a toe: steep at the weld, running out into the plate. */
export function paintUndercut(draft: SceneDraft, options: UndercutOptions): void {
  const bead = lastBead(draft);
  const { grid, profile } = draft;
  const outward = options.side === "left" ? -1 : 1;
  const plan = planShare(draft, options.side);
  const strengthAt = (x: number): number => {
    const ends =
      smoothstep(options.fromMm, options.fromMm + 2.5, x) * smoothstep(options.toMm, options.toMm - 2.5, x);
    const bite = smoothstep(
      -0.15,
      0.25,
      fractalNoise1(x * 0.16, options.seed, 2) + 0.4 * (1 - options.broken),
    );
    return (
      ends *
      (1 - options.broken + options.broken * bite) *
      (0.8 + 0.3 * fractalNoise1(x * 0.6, options.seed + 3, 3))
    );
  };
  const toeAt = (x: number): number | null => {
    const toes = bead.toesAt(x);
    return toes === null ? null : options.side === "left" ? toes.leftMm : toes.rightMm;
  };
  const inner: PlanPoint[] = [];
  const outer: PlanPoint[] = [];
  let deepest = 0;
  for (let x = options.fromMm; x <= options.toMm; x += grid.stepMm) {
    const toe = toeAt(x);
    const strength = Math.max(0, strengthAt(x));
    if (toe === null) continue;
    const width = options.widthMm * plan * (0.45 + 0.55 * strength);
    const box = {
      x0: x - grid.stepMm * 0.499,
      x1: x + grid.stepMm * 0.5,
      y0: toe - width * 1.6,
      y1: toe + width * 1.6,
    };
    forEachPoint(grid, box, (k, _x, y) => {
      const r = ((y - toe) * outward) / width;
      if (r < -0.3 || r > 1.5) return;
      const groove = r < 0.3 ? smoothstep(-0.3, 0.3, r) : r < 1 ? 1 - smoothstep(0.3, 1, r) : 0;
      grid.h[k]! +=
        -(options.depthMm * strength * groove) / plan +
        0.05 * strength * Math.exp(-(((r - 1.12) / 0.2) ** 2));
      if (r > -0.1 && r < 0.95) raiseMask(grid.mask.bare, k, 0.8 * strength);
    });
    deepest = Math.max(deepest, options.depthMm * strength);
    if (strength > 0.08) {
      inner.push([x, toe - 0.15 * outward * width]);
      outer.push([x, toe + outward * width]);
    }
  }
  const thin = Math.max(1, Math.round(0.4 / grid.stepMm));
  const keep = (p: PlanPoint[]): PlanPoint[] => p.filter((_, i) => i % thin === 0);
  const at = (inner[inner.length >> 1] as PlanPoint | undefined) ?? [options.fromMm, 0];
  const edge = (outer[outer.length >> 1] as PlanPoint | undefined) ?? at;
  draft.records.push({
    kind: "undercut",
    outline: [...keep(inner), ...keep(outer).reverse()],
    closed: true,
    sizes: {
      lengthMm: options.toMm - options.fromMm,
      widthMm: Math.abs(surfaceDistance(profile, edge[1]) - surfaceDistance(profile, at[1])),
      depthMm: deepest,
    },
    place: toePlace(draft, options.side),
    stretch:
      options.toMm - options.fromMm > 0.9 * (bead.shape.endMm - bead.shape.startMm) ? "whole-length" : "run",
  });
}

/** Plan millimetres per surface millimetre beside the toe: 1 on flat work, 0.707 on a plate seen at 45 degrees. */
export function planShare(draft: SceneDraft, side: "left" | "right"): number {
  const facets = draft.profile.facets;
  const facet = side === "left" ? facets[0]! : facets[facets.length - 1]!;
  return 1 / Math.hypot(1, (facet.z1 - facet.z0) / (facet.y1 - facet.y0));
}

export function toePlace(
  draft: SceneDraft,
  side: "left" | "right",
): "upper-toe" | "lower-toe" | "left-toe" | "right-toe" {
  const leaning = draft.profile.facets.length === 2 || draft.profile.facets[0]!.name === "lower-plate";
  if (leaning) return side === "left" ? "lower-toe" : "upper-toe";
  return side === "left" ? "left-toe" : "right-toe";
}
