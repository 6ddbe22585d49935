import { LIMITED_PASSES } from "./rules-electrode";
import { PLATE_FOR_120V_MM } from "./rules-plate";
import { readingResolution, TRAVEL_AGREEMENT } from "./rules-window";

/** What the check of a set-up weighs by, as plain data, for a seal over it: whoever adds a figure adds it here. */
export const setupTables = {
  LIMITED_PASSES,
  PLATE_FOR_120V_MM,
  readingResolution,
  TRAVEL_AGREEMENT,
} as const;
