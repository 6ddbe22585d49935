/** The largest JSON that any door reads: parsing it takes less than a tenth of a second. */
export const MOST_JSON_MB = 4;
export const MOST_JSON_BYTES = MOST_JSON_MB * 2 ** 20;
