import { legOfThroat } from "@/lib/measure";
import type { JobWeld } from "./job";
import type { SignedBead } from "./signed-record";

/** Steps of a gauge apart, a size written by hand is another size. */
const SAME_MM = 0.05;

/** What turning inches into mm and adding them up may lose: far below any step of a rule. */
const ROUNDING_MM = 1e-6;

/** The leg a weld is asked to have, mm: as written, or as its throat gives it between square plates. Null: none asked. */
export function askedLegMm({ legMm, throatMm }: Pick<JobWeld, "legMm" | "throatMm">): number | null {
  if (typeof legMm === "number") return legMm;
  return typeof throatMm === "number" ? legOfThroat(throatMm, 90) : null;
}

/** Whether a bead was judged for the size its weld is asked to have. A weld that asks none agrees with any. */
export function judgedForAskedSize(
  weld: Pick<JobWeld, "legMm" | "throatMm">,
  targetLegMm: number | null,
): boolean {
  const asked = askedLegMm(weld);
  return asked === null || (targetLegMm !== null && Math.abs(asked - targetLegMm) <= SAME_MM);
}

/**
 * Where the only bead of a weld was read shorter than asked by more than the rule's smallest step; else null. A study of
 * the rule allows no more: a wider gauge must not let a shorter weld pass, and the point that is raised says no more than
 * what was asked and what was read. Of a weld that is looked at in part, or run in several beads, no single length says it.
 */
export function shortOf(
  { lengthMm, asked }: JobWeld,
  beads: readonly Pick<SignedBead, "judgement">[],
): { readonly asked: number; readonly read: number } | null {
  const [bead, ...others] = beads;
  const isWhole = asked?.kind === "percent" && asked.percent >= 100;
  const last = bead?.judgement.readings.findLast(({ quantity }) => quantity === "weld-length");
  if (lengthMm === null || !last || !isWhole || others.length > 0) return null;
  return lengthMm - last.value <= last.resolution + ROUNDING_MM
    ? null
    : { asked: lengthMm, read: last.value };
}

/** Whether the beads are of the size and the length that their weld is asked to have, as far as the record says. */
export const isAsAsked = (
  weld: JobWeld,
  beads: readonly Pick<SignedBead, "judgement" | "setup">[],
): boolean =>
  beads.every(({ setup }) => judgedForAskedSize(weld, setup.targetLegMm)) && shortOf(weld, beads) === null;
