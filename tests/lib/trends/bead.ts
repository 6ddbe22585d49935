import type { BeadObservation } from "@/lib/trends/observation";

/** An observation of which nothing is known but what is given. */
export function bead(beadId: string, known: Partial<BeadObservation> = {}): BeadObservation {
  return {
    beadId,
    day: "2026-11-25",
    welder: null,
    process: null,
    electrodeClass: null,
    joint: null,
    position: null,
    imperfections: [],
    verdict: null,
    confirmedCause: null,
    ...known,
  };
}
