import {
  answerKind,
  assess,
  defaultAssessContext,
  type AnswerKind,
  type AssessContext,
  type Assessment,
  type BeadContent,
  type PhotoFacts,
} from "@/lib/assess";

export interface BenchAssessment extends Assessment {
  /** Set-up findings that should be put right before the next bead. */
  readonly stops: number;
  /** What the diagnosis has to say first; "unlooked" where there is none. */
  readonly answer: AnswerKind;
}

/** What the page says of the answer before the browser can work it out by itself. */
export type FirstAnswer = Pick<BenchAssessment, "stops" | "answer">;

/** Everything Toeline has to say about a bead on the workbench. Browser and server come to the same. */
export function benchAssessment(
  content: BeadContent,
  photos: readonly PhotoFacts[],
  { shopCounts, shopSets }: Pick<AssessContext, "shopCounts" | "shopSets">,
): BenchAssessment {
  const assessment = assess(content, photos, { ...defaultAssessContext, shopCounts, shopSets });
  return { ...assessment, stops: stopsIn(assessment), answer: answerOf(assessment, content) };
}

export function firstAnswer(...asked: Parameters<typeof benchAssessment>): FirstAnswer {
  const { stops, answer } = benchAssessment(...asked);
  return { stops, answer };
}

const stopsIn = ({ setup }: Assessment): number =>
  setup.filter((finding) => finding.severity === "stop").length;

function answerOf({ diagnosis }: Assessment, { photos, judgement }: BeadContent): AnswerKind {
  const isMarked = photos.some(({ drawing }) => drawing.marks.length > 0);
  return diagnosis.ok ? answerKind(diagnosis.value, isMarked || judgement.lookedFor.length > 0) : "unlooked";
}
