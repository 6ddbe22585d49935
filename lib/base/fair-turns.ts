export interface TurnLimits {
  /** Pieces of work at once, of all senders together. */
  readonly atOnce: number;
  /** Pieces of one sender that may wait. */
  readonly mostWaiting: number;
}

export interface FairTurns {
  /** Runs work when its turn comes. A failure is the asker's alone. */
  run<T>(sender: string, work: () => Promise<T>): Promise<T>;
  /** Whether one more of this sender's would wait too long. */
  isFull(sender: string): boolean;
}

/**
 * Fair turns at dear work: of each sender one piece at a time, and the senders one after the other, however many pieces
 * somebody has sent. So nobody waits behind another's heap, and one that takes long leaves the other places free.
 */
export function fairTurns({ atOnce, mostWaiting }: TurnLimits): FairTurns {
  const queues = new Map<string, (() => void)[]>();
  const busy = new Set<string>();
  const next = (): void => {
    if (busy.size >= atOnce) return;
    for (const [sender, queue] of queues) {
      if (busy.has(sender)) continue;
      const first = queue.shift();
      // Whoever had a turn goes to the end of the line.
      queues.delete(sender);
      if (queue.length > 0) queues.set(sender, queue);
      if (!first) continue;
      busy.add(sender);
      first();
      return next();
    }
  };
  return {
    isFull: (sender) => (queues.get(sender)?.length ?? 0) >= mostWaiting,
    // Each asker waits and then works by themselves: begun by whoever was done before, it would be done for them.
    async run<T>(sender: string, work: () => Promise<T>) {
      await new Promise<void>((turn) => {
        const queue = queues.get(sender) ?? [];
        queue.push(turn);
        queues.set(sender, queue);
        next();
      });
      try {
        return await work();
      } finally {
        busy.delete(sender);
        next();
      }
    },
  };
}
