import { fairTurns, type FairTurns } from "@/lib/base";
import { ofSite } from "@/lib/sites";

/**
 * Two at once: decoding 64 megapixels takes some hundred megabytes, so more would wait for the memory instead. Of one sender
 * a whole roll of a job may wait, and no more work than is done in some minutes. On globalThis, because a bundle may hold
 * this module more than once.
 */
const shared = globalThis as { toelineDecoding?: FairTurns };
const turns = (): FairTurns => (shared.toelineDecoding ??= fairTurns({ atOnce: 2, mostWaiting: 60 }));

/** Whether one more of this sender's would wait too long. */
export const isFull = (sender: string): boolean => turns().isFull(ofSite(sender));

/** Runs work in fair turns (`fairTurns`): of each sender one piece at a time, the senders one after the other. */
export const inTurn = <T>(sender: string, work: () => Promise<T>): Promise<T> =>
  turns().run(ofSite(sender), work);
