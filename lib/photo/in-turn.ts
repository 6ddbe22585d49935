let last: Promise<unknown> = Promise.resolve();

/**
 * Runs one piece of work at a time, in the order asked. Decoding 64 megapixels takes some hundred megabytes, so two
 * uploads wait for each other instead of for the memory. A failure is the asker's alone; the next one runs.
 */
export function inTurn<T>(work: () => Promise<T>): Promise<T> {
  const mine = last.then(work, work);
  last = mine.catch(() => undefined);
  return mine;
}
