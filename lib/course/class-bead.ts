import { proposal, type Assessed } from "@/lib/assess";
import type { ClassBead } from "./class-counts";

/** What is counted of one bead: its marks, its likeliest cause where there is something to cure, its verdict. */
export function countedBead({
  content,
  assessment,
}: Assessed): Pick<ClassBead, "imperfections" | "looked" | "cause" | "verdict"> {
  const { diagnosis, verdict } = assessment;
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
