import { imperfections, patterns, places, stretches } from "./imperfections";
import { AMPS_PER_INCH, AMPS_RULE_MAX_MM, feedCaps } from "./input-power";
import { documents } from "./tables/documents";
import { alsoUsedSource, electrodeClasses } from "./tables/electrode-classes";
import { positionFactors } from "./tables/position-factors";
import { thicknessRows } from "./tables/thickness-rows";
import { windowRows } from "./tables/window-rows";

/** Every table of this room as plain data, for a seal over them: whoever adds a table adds it here. */
export const tradeTables = {
  imperfections,
  vocabulary: { patterns, places, stretches },
  documents,
  electrodeClasses,
  alsoUsedSource,
  positionFactors,
  thicknessRows,
  windowRows,
  inputPower: { feedCaps, AMPS_RULE_MAX_MM, AMPS_PER_INCH },
} as const;
