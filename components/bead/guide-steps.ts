import type { BeadContent } from "@/lib/assess";

export const guideStepIds = ["scale", "weld", "mark", "read"] as const;
export type GuideStepId = (typeof guideStepIds)[number];

/** What a first bead takes, in the order in which it is least work: title, and what to press. */
export const guideWords: Readonly<Record<GuideStepId, { readonly title: string; readonly how: string }>> = {
  scale: {
    title: "Say how large it is",
    how: "Press Scale, then “Find the printed strip”. From then on every size is in real units.",
  },
  weld: {
    title: "Say where the weld lies",
    how: "Press Weld. Tap where the bead starts, then at its crater, then Done.",
  },
  mark: {
    title: "Mark what you see",
    how: "Press Line. Along the lower toe metal has rolled over the plate: tap at both ends of that, then Done, and choose “Cold lap”.",
  },
  read: {
    title: "Read the answer",
    how: "Press Causes: what most likely went wrong, and the one change to try next.",
  },
};

/** What of it is there. `answerRead`: the causes were looked at. */
export function guideDone(content: BeadContent, answerRead: boolean): ReadonlySet<GuideStepId> {
  const drawings = content.photos.map(({ drawing }) => drawing);
  const done: Readonly<Record<GuideStepId, boolean>> = {
    scale: drawings.some(({ scale }) => scale !== null),
    weld: drawings.some(({ weldLine }) => weldLine !== null),
    mark: drawings.some(({ marks }) => marks.length > 0),
    read: answerRead,
  };
  return new Set(guideStepIds.filter((id) => done[id]));
}

/** The first step that is not done; null: all are. What was done in another order counts. */
export const nextStep = (done: ReadonlySet<GuideStepId>): GuideStepId | null =>
  guideStepIds.find((id) => !done.has(id)) ?? null;
