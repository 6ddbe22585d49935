import type { Source } from "@/lib/base";
import { withoutDocument } from "./cite";

/** From most to least to be trusted. */
const trust: readonly Source["confidence"][] = [
  "seen",
  "derived",
  "seen-older",
  "seen-part",
  "memory",
  "common-practice",
  "own-estimate",
];

/** One source that names several documents, at the confidence of the weakest. */
export function together(sources: readonly Source[]): Source {
  const [first, ...rest] = sources;
  if (first === undefined) return withoutDocument("none", "memory");
  if (rest.every((source) => source.document === first.document && source.note === first.note)) {
    return first;
  }
  const documents = [...new Set(sources.map((source) => source.document))];
  const weakest = sources.reduce((a, b) =>
    trust.indexOf(b.confidence) > trust.indexOf(a.confidence) ? b : a,
  );
  return withoutDocument(documents.join("; "), weakest.confidence);
}
