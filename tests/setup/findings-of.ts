import type { Walk, WalkStep } from "@/lib/verify/walk";

/** Every step of a walk, to its end. */
export async function stepsOf(walk: Walk<unknown>): Promise<readonly WalkStep[]> {
  const steps: WalkStep[] = [];
  for await (const step of walk) steps.push(step);
  return steps;
}

/** What a walk finds, in its order. */
export const findingsOf = async (walk: Walk<unknown>): Promise<WalkStep["findings"]> =>
  (await stepsOf(walk)).flatMap(({ findings }) => findings);
