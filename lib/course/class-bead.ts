import {
  assess,
  defaultAssessContext,
  proposal,
  type AssessContext,
  type BeadContent,
  type PhotoFacts,
} from "@/lib/assess";
import type { ClassBead } from "./class-counts";

/** What is counted of one bead: its marks, its likeliest cause where there is something to cure, its verdict. */
export function countedBead(
  content: BeadContent,
  photos: readonly PhotoFacts[],
  context: AssessContext = defaultAssessContext,
): Pick<ClassBead, "imperfections" | "looked" | "cause" | "verdict"> {
  const { diagnosis, verdict } = assess(content, photos, context);
  const imperfections = content.photos.flatMap(({ drawing }) =>
    drawing.marks.map((mark) => mark.imperfection),
  );
  const spoken =
    diagnosis.ok && (proposal(diagnosis.value) !== null || diagnosis.value.explainable.length > 0);
  const [first] = spoken ? diagnosis.value.causes : [];
  return {
    imperfections,
    looked: imperfections.length > 0 || content.judgement.lookedFor.length > 0,
    cause: first ? { id: first.id, name: first.name } : null,
    verdict: verdict?.ok ? verdict.value.verdict : null,
  };
}
