import type { Held } from "@/components/saving";
import type { BeadContent, PhotoFacts, PhotoRole } from "@/lib/assess";

/** One window's work on one bead as it lies on this device. */
export interface KeptBead {
  /** "BEAD/WINDOW": two windows on one bead never write over one another. */
  readonly key: string;
  readonly beadId: string;
  /** Whose work it is (`actorRef`): nobody else is shown it. */
  readonly by: string;
  /** No record of it has been made yet. */
  readonly isNew: boolean;
  /** null while there is no record. */
  readonly number: number | null;
  /** The title its record was made with where it began on this device; null: it did not, or there is none yet. */
  readonly madeAs: string | null;
  readonly held: Held<BeadContent>;
  /** What is known of its photos; `sha256` is empty while one waits here. */
  readonly photos: readonly PhotoFacts[];
  /** Of the last gesture, ms since 1970. */
  readonly at: number;
  /** Why it cannot be sent without a person, in a sentence; null: it can. Opening the bead shows what to do. */
  readonly stuck: string | null;
}

/** A photo that waits on this device to be sent. */
export interface KeptPhoto {
  readonly id: string;
  readonly beadId: string;
  readonly by: string;
  readonly role: PhotoRole;
  /** The name of the file, for the person. */
  readonly name: string;
  readonly file: Blob;
  /** Upright, as this browser reads it; null: it cannot show this kind. */
  readonly size: { readonly widthPx: number; readonly heightPx: number } | null;
  /** When it was taken in, ms since 1970: photos go out in this order. */
  readonly at: number;
  /** Why Toeline did not take it; null: not refused. */
  readonly refused: string | null;
}

export const keyOf = (beadId: string, windowId: string): string => `${beadId}/${windowId}`;

/** Photos in the order in which they go out: as they were taken, and one that was refused never by itself again. */
export function photosToSend(photos: readonly KeptPhoto[]): readonly KeptPhoto[] {
  return photos
    .filter(({ refused }) => refused === null)
    .toSorted((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1));
}

/** How much of this the store does not have yet. */
export function unsentOf(
  isSent: boolean,
  photos: readonly KeptPhoto[],
): { readonly changes: boolean; readonly photos: number; readonly count: number } {
  const waiting = photosToSend(photos).length;
  return { changes: !isSent, photos: waiting, count: waiting + (isSent ? 0 : 1) };
}

const letters = "bcdfghjkmnpqrstvwxyz23456789";

/**
 * An id as the store makes them (lib/store/new-id): a bead or photo that begins on this device keeps it. Not
 * `crypto.randomUUID`, which a browser offers only on https and localhost.
 */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return Array.from(bytes, (byte) => letters[byte % letters.length]).join("");
}
