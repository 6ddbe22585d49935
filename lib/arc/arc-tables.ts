import { ARC_MM, ERROR_PER_DOUBLING } from "./amps-for-feed";
import { burnOffRows, scaled } from "./tables/burn-off-rows";
import { AREA_RELATIVE_ERROR, depositionRows } from "./tables/deposition-rows";
import { filletFace } from "./tables/fillet-face";
import { heatFactors } from "./tables/heat-factors";
import { passRows } from "./tables/pass-rows";

/** Every table of this room as plain data, for a seal over them: whoever adds a table adds it here. */
export const arcTables = {
  burnOffRows,
  scaled,
  arc: { ARC_MM, ERROR_PER_DOUBLING },
  depositionRows,
  AREA_RELATIVE_ERROR,
  filletFace,
  passRows,
  heatFactors,
} as const;
