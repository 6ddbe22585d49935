/** The strip the reader looks at, in its own pixels; the same numbers stand in `demo-images/training/net.py`. */
export const STRIP = {
  rows: 256,
  columns: 768,
  /** Columns before the line's first end and behind its last. */
  margin: 64,
  /** Columns of the strip to one of the answer. */
  step: 2,
} as const;

export const ANSWER_COLUMNS = STRIP.columns / STRIP.step;
/** Rows of the answer and "none here". */
export const ANSWER_ROWS = STRIP.rows + 1;
export const LINE_COLUMNS = STRIP.columns - 2 * STRIP.margin;
