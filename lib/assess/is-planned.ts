import type { BeadContent } from "./bead";

/** A bead that is to be run with a change and was not yet: nothing of it was photographed, read, looked for or answered. */
export function isPlanned({ photos, judgement }: Pick<BeadContent, "photos" | "judgement">): boolean {
  const { tried, outcome, readings, lookedFor, answers } = judgement;
  return (
    tried !== null &&
    outcome === null &&
    photos.length === 0 &&
    readings.length === 0 &&
    lookedFor.length === 0 &&
    Object.keys(answers).length === 0
  );
}
