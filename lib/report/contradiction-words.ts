import type { Contradiction, ContradictionCode } from "@/lib/accept";
import { figureWords, type MarkNumber } from "./reading-words";
import { missingSentences } from "./verdict-words";

const says: Readonly<Record<ContradictionCode, (between: string) => string>> = {
  "fillet-readings": (between) => `No one fillet has these readings: ${between}.`,
  "hollow-or-full": (between) =>
    `The one says the face is full, the other that it is hollow, and the clause hangs on which: ${between}.`,
  "ticked-absent": (between) =>
    `Ticked as looked for and absent, yet the reading shows it: ${between}. Take the tick back, or read again.`,
  "length-and-place": (between) => `The place it takes up is longer than the mark itself: ${between}.`,
  "count-of-one": (between) =>
    `Several are counted where one hole is judged: ${between}. Say how they lie: scattered, in a cluster, in a line.`,
  "leg-and-throat-asked": (between) =>
    `Leg and throat asked for belong to two different fillets: ${between}.`,
  "penetration-asked": (between) =>
    `Complete penetration is asked for, and a weld thinner than the plate as well: ${between}.`,
};

/** One contradiction in a sentence, with what to read again first. */
export function contradictionSentence(
  { code, between, again }: Contradiction,
  markNumber: MarkNumber,
): string {
  const sentence = says[code](between.map((figure) => figureWords(figure, markNumber)).join(", "));
  const first = missingSentences(again, markNumber);
  return first.length === 0 ? sentence : `${sentence} Read again: ${first.join("; ")}.`;
}
