import { ofSite } from "@/lib/sites";

/** On globalThis, because a bundle may hold this module more than once. */
const shared = globalThis as { toelineOpenExports?: Map<string, number> };

/** Exports being read at once, of one sender and of all: each holds a slice of beads. Own estimates. */
const MOST = { sender: 4, all: 12 } as const;

export const EXPORTS_OPEN =
  "As many exports as may run at once are still being sent. Wait until one is there, then ask again.";

/** A place for one more export of this sender's; null: there is none. Whoever took it gives it back by calling it, once. */
export function takeExport(sender: string): (() => void) | null {
  const open = (shared.toelineOpenExports ??= new Map<string, number>());
  const who = ofSite(sender);
  const mine = open.get(who) ?? 0;
  const all = [...open.values()].reduce((sum, count) => sum + count, 0);
  if (mine >= MOST.sender || all >= MOST.all) return null;
  open.set(who, mine + 1);
  let isOpen = true;
  return () => {
    if (!isOpen) return;
    isOpen = false;
    const left = (open.get(who) ?? 1) - 1;
    if (left > 0) open.set(who, left);
    else open.delete(who);
  };
}
