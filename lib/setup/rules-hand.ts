import { MM_PER_INCH } from "@/lib/base";
import { fromMemory, isFillet } from "@/lib/trade";
import { finding, inOrder, type SetupRule } from "./finding";
import { studyNotes } from "./sources";

/** Travel by hand with cored or solid wire: about 8 to 20 in/min. From memory. */
export const HAND_TRAVEL = { low: 8 * MM_PER_INCH, high: 20 * MM_PER_INCH, source: fromMemory };

/** How far the gun may lean to one plate before it shows, degrees; from twice that it is plain. Own estimate. */
export const WORK_ANGLE_OFF_DEG = 11;

/** The angle that bisects the joint: 45 degrees for a fillet, square to the plate otherwise. */
export function bisectingAngleDeg(joint: Parameters<typeof isFillet>[0]): number {
  return isFillet(joint) ? 45 : 90;
}

export const workAngleOff: SetupRule = ({ workAngleDeg, joint }) => {
  if (workAngleDeg === null || joint === null) return [];
  const wanted = bisectingAngleDeg(joint);
  const said = {
    data: { value: workAngleDeg, wanted, off: Math.abs(workAngleDeg - wanted) },
    source: studyNotes,
  };
  const fields = ["workAngleDeg", "joint"] as const;
  return said.data.off >= WORK_ANGLE_OFF_DEG
    ? [finding("work-angle-off", "note", [...fields], said)]
    : [inOrder("work-angle-off", [...fields], said)];
};
