/** A bead of which this device has more than the store. */
export interface LeftBead {
  /** As in `KeptBead`: two windows may have left work on one bead. */
  readonly key: string;
  readonly beadId: string;
  readonly isNew: boolean;
  readonly number: number | null;
  readonly title: string;
  /** How much of it waits: its photos, and everything else as one. */
  readonly count: number;
  readonly stuck: string | null;
}

let shown: readonly LeftBead[] = [];
const listeners = new Set<() => void>();

/** What was left on this device, as it was last looked at (left-work). */
export const leftBeads = {
  state: (): readonly LeftBead[] => shown,
  show: (beads: readonly LeftBead[]): void => {
    shown = beads;
    for (const listener of listeners) listener();
  },
  subscribe: (listener: () => void): (() => void) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
};
