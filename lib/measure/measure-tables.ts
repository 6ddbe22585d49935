import { CHI_SQUARE_99, HAND_SIGMA_MM, NORMAL_99 } from "./fillet-section";
import { knownSizes } from "./known-sizes";
import * as options from "./options";

/** What a size is reckoned with, as plain data, for a seal over it. */
export const measureTables = {
  knownSizes,
  options: { ...options },
  fillet: { HAND_SIGMA_MM, CHI_SQUARE_99, NORMAL_99 },
} as const;
