import { forwardFigures } from "./forward";
import { PLATE_RULE } from "./rules-current";
import { LIMITED_PASSES } from "./rules-electrode";
import { WORK_ANGLE_OFF_DEG } from "./rules-hand";
import { PLATE_FOR_120V_MM } from "./rules-input";
import { gapLimits, SHORT_ARC_PLATE_MM } from "./rules-plate";
import { readingResolution, TRAVEL_AGREEMENT } from "./rules-window";
import { usualWindows } from "./usual-windows";

/** What the check of a set-up weighs by, as plain data, for a seal over it: whoever adds a figure adds it here. */
export const setupTables = {
  LIMITED_PASSES,
  PLATE_FOR_120V_MM,
  TRAVEL_AGREEMENT,
  PLATE_RULE,
  WORK_ANGLE_OFF_DEG,
  SHORT_ARC_PLATE_MM,
  gapLimits,
  readingResolution,
  usualWindows,
  forwardFigures,
} as const;
