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
  const queues = new Map<string, (() => Promise<void>)[]>();
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
      void first().finally(() => {
        busy.delete(sender);
        next();
      });
      return next();
    }
  };
  return {
    isFull: (sender) => (queues.get(sender)?.length ?? 0) >= mostWaiting,
    run: <T>(sender: string, work: () => Promise<T>) =>
      new Promise<T>((resolve, reject) => {
        const queue = queues.get(sender) ?? [];
        queue.push(() => work().then(resolve, reject));
        queues.set(sender, queue);
        next();
      }),
  };
}
