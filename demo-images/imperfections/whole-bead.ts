import type { ImperfectionId } from "@/lib/trade";
import { sampleHeight } from "../field/height-grid";
import type { SceneDraft } from "./draft";
import { aboveThePlates, measuredBead, type MeasuredBead } from "./measured-bead";
import { recordBand } from "./shape-faults";

/** An imperfection of the bead's whole shape; its sizes are measured on the bead that was laid. */
export interface WholeBead {
  readonly id: WholeBeadId;
  /** What the drawing asks for, where the imperfection is judged by it. */
  readonly targetLegMm?: number;
}

export type WholeBeadId = keyof typeof measures;
type Sizes = Record<string, number>;

/** Mean of each value and its neighbours, so that one ripple's crest is not taken for the bead. */
function smooth(values: readonly number[]): number[] {
  return values.map((_, i) => {
    const near = values.slice(Math.max(0, i - 1), i + 2);
    return near.reduce((sum, v) => sum + v, 0) / near.length;
  });
}

const most = (values: readonly number[]): number => Math.max(...smooth(values));
const least = (values: readonly number[]): number => Math.min(...smooth(values));
const mean = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length;
const widths = ({ sections }: MeasuredBead): number[] => sections.map((s) => s.widthMm);
const heights = ({ sections }: MeasuredBead): number[] => sections.map((s) => s.heightMm);
const lower = ({ sections }: MeasuredBead): number[] => sections.map((s) => s.lowerLegMm ?? NaN);
const upper = ({ sections }: MeasuredBead): number[] => sections.map((s) => s.upperLegMm ?? NaN);

/** Plates' surfaces beside the groove, right over left, mean along the weld. */
function plateStep({ grid, profile, sections }: MeasuredBead): number {
  const beside = 3;
  const left = profile.facets[0]!.y1 - beside;
  const right = profile.facets[profile.facets.length - 1]!.y0 + beside;
  return Math.abs(
    mean(sections.map(({ xMm }) => sampleHeight(grid, xMm, right) - sampleHeight(grid, xMm, left))),
  );
}

/** Slope of each plate as it lies in the field, right over left, degrees; mean along the weld. */
function plateAngle({ grid, profile, sections }: MeasuredBead): number {
  const [near, far] = [4, 20];
  const left = profile.facets[0]!.y1;
  const right = profile.facets[profile.facets.length - 1]!.y0;
  const slope = (x: number, y0: number, y1: number): number =>
    Math.atan2(sampleHeight(grid, x, y1) - sampleHeight(grid, x, y0), y1 - y0);
  const bends = sections.map(
    ({ xMm }) => slope(xMm, right + near, right + far) - slope(xMm, left - far, left - near),
  );
  return (Math.abs(mean(bends)) * 180) / Math.PI;
}

/** Greatest distance of the bead's middle from the straight line that fits it best. */
function wander({ sections }: MeasuredBead): number {
  const xs = sections.map((s) => s.xMm);
  const ys = sections.map((s) => (s.leftMm + s.rightMm) / 2);
  const [mx, my] = [mean(xs), mean(ys)];
  const slope =
    xs.reduce((sum, x, i) => sum + (x - mx) * (ys[i]! - my), 0) /
    xs.reduce((sum, x) => sum + (x - mx) ** 2, 0);
  return Math.max(...xs.map((x, i) => Math.abs(ys[i]! - my - slope * (x - mx))));
}

const measures = {
  "convex-bead": (m) => ({
    widthMm: mean(widths(m)),
    heightMm: mean(heights(m)),
    mostHeightMm: most(heights(m)),
  }),
  "flat-wide-bead": (m) => ({ widthMm: mean(widths(m)), heightMm: mean(heights(m)) }),
  "concave-face": (m) => ({ concavityMm: -least(heights(m)) }),
  "uneven-width": (m) => ({ leastWidthMm: least(widths(m)), mostWidthMm: most(widths(m)) }),
  wandering: (m) => ({ amplitudeMm: wander(m) }),
  "uneven-legs": (m) => ({ lowerLegMm: mean(lower(m)), upperLegMm: mean(upper(m)) }),
  undersized: (m) => ({ legMm: Math.min(least(lower(m)), least(upper(m))) }),
  oversized: (m) => ({ legMm: Math.max(most(lower(m)), most(upper(m))) }),
  underfill: (m) => ({ depthMm: -least(aboveThePlates(m)) }),
  "excess-penetration": (m) => ({ heightMm: most(aboveThePlates(m)) }),
  "angular-misalignment": (m) => ({ angleDeg: plateAngle(m) }),
  misalignment: (m) => ({ stepMm: plateStep(m) }),
} as const satisfies Partial<Record<ImperfectionId, (measured: MeasuredBead) => Sizes>>;

export function recordWholeBead(draft: SceneDraft, { id, targetLegMm }: WholeBead): void {
  const sizes: Sizes = measures[id](measuredBead(draft));
  recordBand(draft, id, 0, targetLegMm === undefined ? sizes : { ...sizes, targetLegMm });
}
