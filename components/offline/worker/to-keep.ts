/** What a page asks the worker to keep on this device, by address. */
export interface ToKeep {
  /** Pages to be fetched anew: one that was reached by a link was never loaded as one. */
  readonly pages?: readonly string[];
  readonly pagesIfNone?: readonly string[];
  readonly pictures?: readonly string[];
}
