import { ofSite } from "@/lib/sites";

const last = new Map<string, Promise<unknown>>();

/**
 * Runs what is done with one photo one after the other, in the order asked: the same bytes sent by two at once, or sent
 * while they are taken out of the store. A failure is the asker's alone; the next one runs.
 */
export function oneByOne<T>(sha256: string, work: () => Promise<T>): Promise<T> {
  const photo = ofSite(sha256);
  const mine = (last.get(photo) ?? Promise.resolve()).then(work, work);
  const settled = mine
    .catch(() => undefined)
    .then(() => {
      if (last.get(photo) === settled) last.delete(photo);
    });
  last.set(photo, settled);
  return mine;
}
