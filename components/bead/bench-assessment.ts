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

type ShopKnows = Pick<AssessContext, "shopCounts" | "shopSets">;

/** By the content it is of: parts of one page share it, and React may begin a page anew and forget what it had worked out. */
const known = new WeakMap<
  BeadContent,
  ShopKnows & { photos: readonly PhotoFacts[]; found: BenchAssessment }
>();

/**
 * Everything Toeline has to say about a bead on the workbench. Browser and server come to the same. Nothing it rests on is ever
 * changed in place: asked again of the very same it says the same.
 */
export function benchAssessment(
  content: BeadContent,
  photos: readonly PhotoFacts[],
  { shopCounts, shopSets }: ShopKnows,
): BenchAssessment {
  const before = known.get(content);
  if (before?.photos === photos && before.shopCounts === shopCounts && before.shopSets === shopSets)
    return before.found;
  const assessment = assess(content, photos, { ...defaultAssessContext, shopCounts, shopSets });
  const found = { ...assessment, stops: stopsIn(assessment), answer: answerOf(assessment, content) };
  known.set(content, { photos, shopCounts, shopSets, found });
  return found;
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
