import type { Position, Process } from "@/lib/trade";
import { passRows, type PassRow } from "./tables/pass-rows";

export type PassLimit = Pick<PassRow, "mm" | "kind" | "source">;

/**
 * What limits the fillet leg of one pass, mm, the least first: the code's largest prequalified pass and what wire and
 * position carry. Unknown process or size: only what holds for every one; unknown position: the code's limit of the
 * positions left open that allows most. Never empty.
 */
export function onePassLimits(about: {
  readonly process: Process | null;
  readonly diameterMm: number | null;
  readonly position: Position | null;
}): readonly PassLimit[] {
  const { process, diameterMm, position } = about;
  const rows = passRows.filter(
    (row) =>
      (process === null
        ? row.positions === undefined && row.upToDiameterMm === undefined
        : row.processes.includes(process)) &&
      (row.positions === undefined || (position !== null && row.positions.includes(position))) &&
      (row.upToDiameterMm === undefined || (diameterMm !== null && diameterMm <= row.upToDiameterMm)),
  );
  return rows.toSorted((a, b) => a.mm - b.mm);
}

/** Passes for a fillet leg, mm, when one carries `onePassMm`: the metal grows with the square of the leg. At least 1. */
export function passesForLeg(legMm: number, onePassMm: number): number {
  if (!(legMm > 0) || !(onePassMm > 0)) return 1;
  // A leg a few hundredths over the limit is one pass: nobody lays closer.
  return Math.max(1, Math.ceil((legMm / onePassMm) ** 2 - 0.05));
}
