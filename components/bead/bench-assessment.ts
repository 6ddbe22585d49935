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
const known = new WeakMap<BeadContent, { readonly shopKnows: ShopKnows; readonly found: BenchAssessment }>();

/**
 * Everything Toeline has to say about a bead on the workbench. Browser and server come to the same. A content is never changed
 * in place, and the photos' facts never change for one id: asked again of the same content it says the same.
 */
export function benchAssessment(
  content: BeadContent,
  photos: readonly PhotoFacts[],
  { shopCounts, shopSets }: ShopKnows,
): BenchAssessment {
  const before = known.get(content);
  if (before?.shopKnows.shopCounts === shopCounts && before.shopKnows.shopSets === shopSets)
    return before.found;
  const assessment = assess(content, photos, { ...defaultAssessContext, shopCounts, shopSets });
  const found = { ...assessment, stops: stopsIn(assessment), answer: answerOf(assessment, content) };
  known.set(content, { shopKnows: { shopCounts, shopSets }, found });
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
