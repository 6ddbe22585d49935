import { burnOffRows, scaledError } from "./tables/burn-off-rows";
import {
  AREA_RELATIVE_ERROR,
  depositionRows,
  STEEL_KG_PER_MM3,
  STEEL_LB_PER_IN3,
} from "./tables/deposition-rows";
import { heatFactors } from "./tables/heat-factors";

/** Every table of this room as plain data, for a seal over them: whoever adds a table adds it here. */
export const arcTables = {
  burnOffRows,
  scaledError,
  depositionRows,
  density: { STEEL_KG_PER_MM3, STEEL_LB_PER_IN3 },
  AREA_RELATIVE_ERROR,
  heatFactors,
} as const;
