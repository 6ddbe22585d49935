import { BLEND_M_PER_MIN } from "./along-rows";
import { imperfections, patterns, places, stretches } from "./imperfections";
import { AMPS_PER_INCH, AMPS_RULE_MAX_MM, feedCaps } from "./input-power";
import { documents } from "./tables/documents";
import { appearances, lookAlikes } from "./tables/look-alikes";
import { shopWords } from "./tables/shop-words";
import { alsoUsedSource, electrodeClasses } from "./tables/electrode-classes";
import { LEAST_SHARE_OF_LINE, positionFactors } from "./tables/position-factors";
import { thicknessRows } from "./tables/thickness-rows";
import { windowRows } from "./tables/window-rows";
import { wireSizePairs, wireSizePairsSource } from "./tables/wire-size-pairs";
import { EITHER_SIDE } from "./window-lines";

/** Every table of this room as plain data, for a seal over them: whoever adds a table adds it here. */
export const tradeTables = {
  imperfections,
  vocabulary: { patterns, places, stretches },
  shopWords,
  lookAlikes,
  appearances,
  documents,
  electrodeClasses,
  alsoUsedSource,
  positionFactors,
  LEAST_SHARE_OF_LINE,
  thicknessRows,
  windowRows,
  EITHER_SIDE,
  BLEND_M_PER_MIN,
  wireSizes: { wireSizePairs, wireSizePairsSource },
  inputPower: { feedCaps, AMPS_RULE_MAX_MM, AMPS_PER_INCH },
} as const;
