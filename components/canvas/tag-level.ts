import type { SceneShape } from "@/lib/marks";

/** How much stands beside each mark on the screen: number and words, the number alone, nothing. */
export const tagLevels = ["words", "numbers", "none"] as const;
export type TagLevel = (typeof tagLevels)[number];

export const tagLevelWords: Readonly<Record<TagLevel, string>> = {
  words: "Labels",
  numbers: "Numbers",
  none: "No labels",
};

export const nextTagLevel = (level: TagLevel): TagLevel =>
  tagLevels[(tagLevels.indexOf(level) + 1) % tagLevels.length]!;

/** What of the scene is shown at this level. The mark that is picked keeps its tags: it is what is spoken of. */
export function withTags(
  shapes: readonly SceneShape[],
  level: TagLevel,
  selectedId: string | null,
): readonly SceneShape[] {
  if (level === "words") return shapes;
  const isHidden = ({ kind, markId }: SceneShape): boolean =>
    markId !== null && markId !== selectedId && (kind === "label" || (kind === "badge" && level === "none"));
  return shapes.filter((shape) => !isHidden(shape));
}
