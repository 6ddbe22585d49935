import type { StudySize } from "./study";

const each = (count: number) => ({ rule: count, card: count, disc: count, strip: count });

/** What the ordinary run goes through: fewer photos where each costs most. */
export const ordinaryStudy: StudySize = {
  photosPerObject: { rule: 8, card: 8, disc: 14, strip: 2 },
  figuresPerKind: 2,
  megapixels: { rule: 0.1, card: 0.1, disc: 0.1, strip: 0.42 },
  photoQualityEvery: 12,
  seed: 5817,
};

/** Two hundred and one small photos: what the deep run goes through. Only the strip is looked for in the pixels. */
export const smallStudy: StudySize = {
  photosPerObject: { rule: 55, card: 55, disc: 55, strip: 36 },
  figuresPerKind: 2,
  megapixels: { rule: 0.1, card: 0.1, disc: 0.1, strip: 0.42 },
  photoQualityEvery: 12,
  seed: 5817,
};

/** What `npm run -s study` prints: more of them, strips at a size nearer to a phone's and every other one with its noise. */
export function fullStudy(photos: number): StudySize {
  return {
    photosPerObject: each(photos),
    figuresPerKind: 3,
    megapixels: { rule: 0.25, card: 0.25, disc: 0.25, strip: 2 },
    photoQualityEvery: 2,
    seed: 20261125,
  };
}
