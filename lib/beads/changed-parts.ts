import type { BeadContent } from "@/lib/assess";
import { canonicalJson } from "@/lib/base";

const differ = (a: unknown, b: unknown): boolean => canonicalJson(a) !== canonicalJson(b);

/** Which parts of a bead a save changed, for the log: "title", "setup", "judgement.readings", "photo:ID". Sorted. */
export function changedParts(before: BeadContent, after: BeadContent): readonly string[] {
  const top = (["title", "welder", "setup"] as const).filter((key) => differ(before[key], after[key]));
  const judged = Object.keys(after.judgement)
    .filter((key) => differ(part(before.judgement, key), part(after.judgement, key)))
    .map((key) => `judgement.${key}`);
  const drawn = after.photos
    .filter((photo) => differ(before.photos.find(({ id }) => id === photo.id) ?? null, photo))
    .map(({ id }) => `photo:${id}`);
  return [...top, ...judged, ...drawn].sort();
}

function part(judgement: BeadContent["judgement"], key: string): unknown {
  return (judgement as Readonly<Record<string, unknown>>)[key] ?? null;
}
