import { traceSentence, type TraceIssue } from "@/lib/trace";
import { lookForScale } from "./look-for-scale";
import { lookForLine } from "./read-toes";
import type { Found } from "./found";

/** Refusals a person can do something about; about the others nothing is said. */
const told: readonly TraceIssue["code"][] = [
  "no-bead-in-picture",
  "two-beads",
  "bead-too-small",
  "photo-blurred",
  "light-blown",
];

/** Looks for a scale and for the weld, and tells what it finds as it finds it. Throws when nothing answers. */
export async function lookAtPhoto(
  photo: { readonly url: string; readonly widthPx: number },
  tell: (part: Partial<Found>) => void,
): Promise<void> {
  const seen = await lookForScale(photo);
  if (seen) tell(seen);
  const line = await lookForLine(photo);
  const issue = line.ok ? undefined : line.issues.find(({ code }) => told.includes(code));
  tell({ line: line.ok ? line.value : null, said: issue === undefined ? null : traceSentence(issue) });
}
