/** Whose beads a list may hold: all, or those one person ran. */
export interface Scope {
  readonly welderId?: string;
}
