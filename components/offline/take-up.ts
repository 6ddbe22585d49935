import type { BeadContent, PhotoFacts } from "@/lib/assess";
import type { KeptBead } from "./kept";

/** A bead as a page brought it; the page may be an old one that this device kept. */
export interface PageBead {
  readonly revision: number;
  readonly content: BeadContent;
  readonly photos: readonly PhotoFacts[];
}

export interface Opening {
  /** What this device holds and the page does not; null: the page is right. */
  readonly taken: KeptBead | null;
  /** Keys of what the store has for certain: nobody needs it here any more. */
  readonly done: readonly string[];
}

/**
 * What to open a bead with, out of what gone windows left behind. Work that is not acknowledged comes first, the newest
 * of it; the rest of it stays and is taken up at another opening. Acknowledged work matters only where the page is older
 * than it: a page out of the device's own store.
 */
export function openingOf(page: Pick<PageBead, "revision">, left: readonly KeptBead[]): Opening {
  const newest = left.toSorted((a, b) => b.at - a.at);
  const unsent = newest.find(({ held }) => !held.isSent);
  const copies = newest.filter(({ held }) => held.isSent);
  const ahead = copies
    .filter(({ held }) => held.basedOn > page.revision)
    .toSorted((a, b) => b.held.basedOn - a.held.basedOn)[0];
  const taken = unsent ?? ahead ?? null;
  return { taken, done: copies.filter((copy) => copy !== taken && copy !== ahead).map(({ key }) => key) };
}

/** What the screen shows of work that was taken up: all of it, and the photos that only the page knows. */
export function takeUp(page: PageBead, kept: KeptBead): Pick<PageBead, "content" | "photos"> {
  const own = new Set(kept.photos.map(({ id }) => id));
  const drawn = new Set(kept.held.content.photos.map(({ id }) => id));
  const facts = new Map(page.photos.map((photo) => [photo.id, photo]));
  return {
    // Where a photo was still waiting when this was kept, the page may know it better by now.
    photos: [
      ...kept.photos.map((photo) => (photo.sha256 === "" ? (facts.get(photo.id) ?? photo) : photo)),
      ...page.photos.filter(({ id }) => !own.has(id)),
    ],
    content: {
      ...kept.held.content,
      photos: [...kept.held.content.photos, ...page.content.photos.filter(({ id }) => !drawn.has(id))],
    },
  };
}
