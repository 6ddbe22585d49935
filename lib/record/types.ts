import type { Issue } from "@/lib/base";
import type { BeadContent, PhotoFacts, PhotoRole } from "@/lib/assess";

/** A photo of a bead as the rest of the program knows it. */
export interface PhotoRecord extends PhotoFacts {
  readonly role: PhotoRole;
  readonly format: string;
  readonly bytes: number;
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

export type RecordIssue = Issue<
  | "bead-gone"
  | "bead-changed-elsewhere"
  | "bead-not-understood"
  | "bead-handed-in"
  | "bead-signed"
  | "photo-already-on-bead"
  | "photo-gone"
  | "person-not-understood"
  | "person-gone"
  | "group-name-missing"
  | "group-name-taken"
  | "group-gone"
  | "exercise-not-understood"
  | "exercise-gone"
  | "exercise-changed-elsewhere"
  | "exercise-closed"
  | "hand-in-code-unknown"
  | "hand-in-needs-account"
  | "hand-in-nameless"
  | "hand-in-not-understood"
  | "hand-in-photo-twice"
  | "hand-in-bead-twice"
  | "hand-in-without-photo"
  | "hand-in-gone"
  | "hand-in-answered"
  | "feedback-not-understood"
  | "feedback-returned"
  | "feedback-changed-elsewhere"
  | "feedback-empty"
  | "feedback-not-returned"
  | "reply-not-understood"
  | "phrase-not-understood"
  | "phrase-gone"
  | "setup-name-missing"
  | "setup-gone"
  | "filter-name-missing"
  | "filter-gone"
  | "job-not-understood"
  | "job-gone"
  | "job-changed-elsewhere"
  | "weld-gone"
  | "weld-has-beads"
  | "criteria-not-understood"
  | "criteria-gone"
  | "criteria-changed-elsewhere"
  | "instrument-not-understood"
  | "instrument-gone"
  | "inspection-gone"
  | "inspection-not-understood"
  | "inspection-changed-elsewhere"
  | "inspection-signed"
  | "sign-not-inspector"
  | "sign-not-what-was-seen"
  | "sign-points-unanswered"
  | "sign-reason-missing"
  | "store-full"
  | "store-unusable"
>;
