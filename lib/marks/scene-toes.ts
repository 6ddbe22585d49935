import type { Toes, TracedPoint } from "./drawing";
import type { SceneLine, SceneShape } from "./scene-types";

/** From here up a toe is drawn solid. Below it is a guess, and dashed. */
export const SOLID_FROM = 0.6;

const WIDTH = 2.5;
const DASH = [7, 7] as const;

/** Each toe as stretches, solid where the reader was sure and dashed where not. */
export function toeShapes(toes: Toes): readonly SceneShape[] {
  return (["upper", "lower"] as const).flatMap((toe) =>
    stretches(toes[toe]).map(({ points, sure }, i): SceneLine => ({
      key: `toes:${toe}-${i}`,
      role: "toes",
      markId: null,
      kind: "line",
      points: points.map(({ x, y }) => ({ x, y })),
      stroke: { ink: "shape", width: WIDTH, dash: sure ? [] : [...DASH] },
    })),
  );
}

/** Neighbouring places that are alike; each stretch begins where the one before it ends. */
function stretches(
  points: readonly TracedPoint[],
): readonly { readonly points: readonly TracedPoint[]; readonly sure: boolean }[] {
  const out: { points: TracedPoint[]; sure: boolean }[] = [];
  for (let i = 1; i < points.length; i++) {
    const [from, to] = [points[i - 1]!, points[i]!];
    const sure = Math.min(from.sure, to.sure) >= SOLID_FROM;
    const last = out[out.length - 1];
    if (last?.sure === sure) last.points.push(to);
    else out.push({ points: [from, to], sure });
  }
  return out;
}
