interface Waiting {
  readonly start: () => Promise<void>;
}

/** Two at once: decoding 64 megapixels takes some hundred megabytes, so more would wait for the memory instead. */
const AT_ONCE = 2;

/** So many photos of one sender may wait: a whole roll of a job, and no more work than is done in some minutes. */
const MOST_WAITING = 60;

const queues = new Map<string, Waiting[]>();
const busy = new Set<string>();

/** Whether one more of this sender's would wait too long. */
export const isFull = (sender: string): boolean => (queues.get(sender)?.length ?? 0) >= MOST_WAITING;

/**
 * Runs work in fair turns: of each sender one piece at a time, and the senders one after the other, however many pieces
 * somebody has sent. So nobody waits behind another's heap, and one that takes long leaves the second place free. A failure
 * is the asker's alone.
 */
export function inTurn<T>(sender: string, work: () => Promise<T>): Promise<T> {
  return new Promise<T>((resolve, reject) => {
    const start = (): Promise<void> => work().then(resolve, reject);
    const queue = queues.get(sender) ?? [];
    queue.push({ start });
    queues.set(sender, queue);
    next();
  });
}

function next(): void {
  if (busy.size >= AT_ONCE) return;
  for (const [sender, queue] of queues) {
    if (busy.has(sender)) continue;
    const first = queue.shift();
    // Whoever had a turn goes to the end of the line.
    queues.delete(sender);
    if (queue.length > 0) queues.set(sender, queue);
    if (!first) continue;
    busy.add(sender);
    void first.start().finally(() => {
      busy.delete(sender);
      next();
    });
    return next();
  }
}
