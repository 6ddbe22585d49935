import {
  assess,
  defaultAssessContext,
  type AssessContext,
  type Assessment,
  type PhotoAssessment,
} from "./assess";
import type { BeadContent, PhotoFacts } from "./bead";

/** As much of a bead as there is to assess. */
export interface AssessableBead {
  readonly content: BeadContent;
  readonly photos: readonly PhotoFacts[];
}

/**
 * A bead with everything that is said of it. Whoever answers a request makes it once for each bead and hands it on:
 * whatever shows the bead, counts it, exports it or signs it takes it so and assesses nothing itself.
 */
export type Assessed<B extends AssessableBead = AssessableBead> = B & { readonly assessment: Assessment };

export function assessBead<B extends AssessableBead>(
  bead: B,
  context: AssessContext = defaultAssessContext,
): Assessed<B> {
  return { ...bead, assessment: assess(bead.content, bead.photos, context) };
}

/** A photo of a bead: what was drawn on it, what is fixed about it, what is said of it. */
export interface AssessedPhoto {
  readonly photo: BeadContent["photos"][number];
  readonly facts: PhotoFacts;
  readonly found: PhotoAssessment | null;
}

/** The photos of a bead in their order, as far as they are stored. */
export function assessedPhotos({ content, photos, assessment }: Assessed): readonly AssessedPhoto[] {
  return content.photos.flatMap((photo) => {
    const facts = photos.find(({ id }) => id === photo.id);
    const found = assessment.photos.find(({ photoId }) => photoId === photo.id) ?? null;
    return facts ? [{ photo, facts, found }] : [];
  });
}
