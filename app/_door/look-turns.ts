import { setTimeout as pause } from "node:timers/promises";
import { fairTurns, type FairTurns } from "@/lib/base";
import { ofSite } from "@/lib/sites";

/** On globalThis, because a bundle may hold this module more than once. */
const shared = globalThis as { toelineLookTurns?: FairTurns };

/**
 * Looks at all records take minutes, so they stand in a line of their own and nobody's paper waits behind one. Two at once,
 * of each sender one; one more of theirs may wait. Own estimates for two cores.
 */
const turns = (): FairTurns => (shared.toelineLookTurns ??= fairTurns({ atOnce: 2, mostWaiting: 1 }));

export const LOOK_WAITS =
  "You have a look at the records going already, and one more that waits for it. Wait until they are over, or stop one.";

/** What stands in a line: whether its turn has come, and how it is given back, before or after it has. */
export interface InLine {
  readonly isMine: () => boolean;
  /** Resolves when the turn comes, or after so long without it. */
  readonly wait: (ms: number) => Promise<unknown>;
  readonly leave: () => void;
}

/** A place in the line of looks; null: too many of this sender's stand there. */
export function standInLine(sender: string): InLine | null {
  const who = ofSite(sender);
  if (turns().isFull(who)) return null;
  let mine = false;
  let leave = (): void => undefined;
  const left = new Promise<void>((resolve) => (leave = resolve));
  const came = new Promise<void>((resolve) => {
    void turns().run(who, () => {
      mine = true;
      resolve();
      return left;
    });
  });
  return {
    isMine: () => mine,
    leave,
    wait: (ms) => Promise.race([came, pause(ms, undefined, { ref: false })]),
  };
}
