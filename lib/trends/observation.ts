import type { ImperfectionId, Joint, Position, Process } from "@/lib/trade";

/** A bead reduced to what trends are made of. Unknown is null: it has a group of its own and is never counted as a value. */
export interface BeadObservation {
  readonly beadId: string;
  /** ISO 8601 calendar date, "2026-11-25". */
  readonly day: string;
  readonly welder: string | null;
  readonly process: Process | null;
  readonly electrodeClass: string | null;
  readonly joint: Joint | null;
  readonly position: Position | null;
  /** What was seen on it; one entry per mark, so the same one may stand several times. */
  readonly imperfections: readonly ImperfectionId[];
  /** null: no criteria were chosen. */
  readonly verdict: "accept" | "reject" | "cannot-say" | null;
  /** Id of the cause a next bead confirmed; null while none is. */
  readonly confirmedCause: string | null;
}
