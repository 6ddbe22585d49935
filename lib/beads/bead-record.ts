import type { BeadContent, PhotoFacts, PhotoRole } from "@/lib/assess";

/** A photo of a bead as the rest of the program knows it. */
export interface PhotoRecord extends PhotoFacts {
  readonly role: PhotoRole;
  readonly format: string;
  readonly bytes: number;
}

/** A bead with its photos, and of what lies around it the ids alone: what its facts follow from. */
export interface OwnBead extends Omit<BeadRecord, "previous" | "handInId"> {
  readonly previousId: string | null;
}

export interface BeadRecord {
  readonly id: string;
  readonly number: number;
  readonly revision: number;
  /** ISO 8601, UTC. */
  readonly createdAt: string;
  readonly updatedAt: string;
  /** The bead this one was run after; null for a first try. */
  readonly previous: { readonly id: string; readonly number: number; readonly title: string } | null;
  /** Person who ran it, where people are kept. */
  readonly welderId: string | null;
  readonly jobId: string | null;
  readonly weldId: string | null;
  readonly handInId: string | null;
  readonly content: BeadContent;
  readonly photos: readonly PhotoRecord[];
}
