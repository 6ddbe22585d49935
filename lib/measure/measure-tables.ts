import { knownSizes } from "./known-sizes";
import * as options from "./options";

/** What a size is reckoned with, as plain data, for a seal over it. */
export const measureTables = { knownSizes, options: { ...options } } as const;
