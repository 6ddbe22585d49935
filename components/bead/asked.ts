import type { Asked } from "@/components/canvas";
import type { EditAction, PhotoPoint, Toes } from "@/lib/marks";
import type { Found } from "./found";

interface Takes {
  readonly onAction: (action: EditAction) => void;
  readonly onFound: (found: Found | null) => void;
  /** A disc was accepted: asks how wide it is. */
  readonly onRim: (rim: readonly PhotoPoint[]) => void;
  readonly onProposed: (toes: Toes | null) => void;
}

/** What is asked about what was read off a photo by itself: one thing at a time, the toes after scale and weld line. */
export function askedAbout(found: Found | null, proposed: Toes | null, takes: Takes): Asked | null {
  const first = found && aboutFound(found, takes);
  return first ?? (proposed && aboutToes(proposed, takes));
}

function aboutFound(found: Found, { onAction, onFound, onRim }: Takes): Asked | null {
  const { busy, scale, rim, line } = found;
  if (scale === null && rim === null && line === null) return null;
  const accept = () => {
    if (scale) onAction({ type: "scale.set", scale });
    if (line) onAction({ type: "weldLine.set", points: line });
    if (rim) onRim(rim);
    onFound(null);
  };
  return {
    words: line ? "Do the lines fit, and is the start where it says?" : "Do the lines fit?",
    answers: [
      { label: busy ? "Still looking …" : acceptWords(found), isMain: true, isOff: busy, onPress: accept },
      ...(line
        ? [{ label: "Swap the ends", onPress: () => onFound({ ...found, line: line.toReversed() }) }]
        : []),
      { label: "Drop", onPress: () => onFound(null) },
    ],
  };
}

function acceptWords({ scale, rim, line }: Found): string {
  const what = scale ? "scale" : rim ? "disc" : null;
  if (what === null) return "Accept the weld line";
  return line ? `Accept ${what} and weld line` : `Accept the ${what}`;
}

const aboutToes = (toes: Toes, { onAction, onProposed }: Takes): Asked => ({
  words: "Solid is sure, dashed is a guess. Look along both.",
  answers: [
    {
      label: "Accept these toes",
      isMain: true,
      onPress: () => {
        onAction({ type: "toes.set", toes });
        onProposed(null);
      },
    },
    { label: "Drop them", onPress: () => onProposed(null) },
  ],
});
