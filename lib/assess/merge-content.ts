import type { Drawing, Mark } from "@/lib/marks";
import type { BeadContent } from "./bead";

/**
 * Two people (or two tabs) changed one bead from the same revision. Keeps every mark of both and everything ticked as
 * looked for by both; where both changed one and the same thing, `mine` wins.
 */
export function mergeContent(mine: BeadContent, theirs: BeadContent): BeadContent {
  const theirPhotos = new Map(theirs.photos.map((photo) => [photo.id, photo]));
  const photos = mine.photos.map((photo) => {
    const other = theirPhotos.get(photo.id);
    if (!other) return photo;
    const section = photo.section ?? other.section;
    return {
      ...photo,
      drawing: mergeDrawings(photo.drawing, other.drawing),
      ...(section ? { section } : {}),
    };
  });
  const known = new Set(mine.photos.map((photo) => photo.id));
  return {
    ...mine,
    judgement: {
      ...mine.judgement,
      lookedFor: [...new Set([...mine.judgement.lookedFor, ...theirs.judgement.lookedFor])],
      answers: { ...theirs.judgement.answers, ...mine.judgement.answers },
      note: mine.judgement.note || theirs.judgement.note,
    },
    photos: [...photos, ...theirs.photos.filter((photo) => !known.has(photo.id))],
  };
}

function mergeDrawings(mine: Drawing, theirs: Drawing): Drawing {
  const ids = new Set(mine.marks.map((mark) => mark.id));
  const marks: Mark[] = [...mine.marks, ...theirs.marks.filter((mark) => !ids.has(mark.id))];
  const toes = mine.toes ?? theirs.toes;
  return {
    ...mine,
    marks,
    scale: mine.scale ?? theirs.scale,
    weldLine: mine.weldLine ?? theirs.weldLine,
    ...(toes === undefined ? {} : { toes }),
  };
}
