import { filletSize, depositAreaMm2 } from "../geometry/bead-size";
import type { RunSetup } from "@/lib/setup";

/** Plan toes of a fillet in a T-joint seen at 45 degrees, from the set-up; `lean` > 0 lengthens the lower leg. */
export function teeToes(
  setup: RunSetup,
  convexity: number,
  lean = 0,
): { leftMm: number; rightMm: number; crownMm: number; legMm: number } {
  const { legMm, convexityMm } = filletSize(depositAreaMm2(setup) ?? 18, convexity);
  const flat = legMm * Math.SQRT1_2;
  return { leftMm: -flat * (1 + lean), rightMm: flat * (1 - lean), crownMm: convexityMm, legMm };
}
