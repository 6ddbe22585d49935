import type { ImperfectionId } from "./imperfections";
import type { Process } from "./names";

const wire: readonly Process[] = ["FCAW-S", "FCAW-G", "GMAW"];

/** What only some processes can leave: tungsten wants a tungsten electrode, the others a wire and its contact tip. */
const onlyIn: Partial<Record<ImperfectionId, readonly Process[]>> = {
  "tungsten-inclusion": ["GTAW"],
  burnback: wire,
  "copper-inclusion": wire,
  "wire-stub": wire,
};

/** Whether it can come of this process. While nobody said which it is (null), only what any may leave does. */
export function comesOf(id: ImperfectionId, process: Process | null): boolean {
  const processes = onlyIn[id];
  return processes === undefined || (process !== null && processes.includes(process));
}
