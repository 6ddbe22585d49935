import { assessedPhotos, type Assessed } from "@/lib/assess";
import { drawnProfile } from "@/lib/trace";
import type { ResponseName } from "./trial";

/** A reading of one bead; `spread`: its own expanded uncertainty (about 95 %), null where none is stated. */
export interface BeadResponse {
  readonly value: number;
  readonly spread: number | null;
}

export type BeadResponses = Readonly<Record<ResponseName, BeadResponse | null>>;

/**
 * What a bead says of each response. Width by the gauge, or by the toes that were accepted on a photo with a scale; leg the
 * shorter of both; evenness how much the width varies along the bead, in percent of it; marks how many imperfections are
 * marked, null while nobody looked. Nothing is worked out from something else.
 */
export function responsesOf(bead: Assessed): BeadResponses {
  const gauge = (...names: readonly string[]): BeadResponse | null => {
    const read = bead.content.judgement.readings.filter(({ quantity }) => names.includes(quantity));
    if (read.length === 0 || new Set(read.map(({ quantity }) => quantity)).size < names.length) return null;
    const least = read.reduce((a, b) => (b.value < a.value ? b : a));
    const { value, resolution, study } = least;
    return { value, spread: study ? Math.max(resolution, study.k * study.u) : resolution };
  };
  const profile = profileOf(bead);
  return {
    width:
      gauge("width") ?? (profile && { value: profile.mean.value, spread: profile.mean.expandedUncertainty }),
    leg: gauge("leg-1", "leg-2"),
    convexity: gauge("convexity"),
    evenness: profile && { value: 100 * profile.spread, spread: null },
    marks: marksOf(bead),
  };
}

function profileOf(bead: Assessed) {
  for (const { photo, found } of assessedPhotos(bead)) {
    const { toes, marks } = photo.drawing;
    if (photo.role !== "face" || !toes || !found?.calibration?.ok) continue;
    const profile = drawnProfile(found.calibration.value, toes, marks);
    if (profile !== null) return profile;
  }
  return null;
}

function marksOf(bead: Assessed): BeadResponse | null {
  const marks = bead.content.photos.reduce((sum, { drawing }) => sum + drawing.marks.length, 0);
  const looked = marks > 0 || bead.content.judgement.lookedFor.length > 0;
  return looked ? { value: marks, spread: null } : null;
}

/** How each response is called, in which unit it is, and how far two beads of one setting usually lie apart (standard deviation). */
export const responseRows = {
  width: { label: "Width of the face", unit: "mm", usualNoise: 0.5, want: "target" },
  leg: { label: "Leg", unit: "mm", usualNoise: 0.5, want: "target" },
  convexity: { label: "Convexity", unit: "mm", usualNoise: 0.3, want: "least" },
  evenness: { label: "Unevenness of the width", unit: "%", usualNoise: 2, want: "least" },
  marks: { label: "Marks on the bead", unit: "", usualNoise: 1, want: "least" },
} as const satisfies Readonly<
  Record<ResponseName, { label: string; unit: string; usualNoise: number; want: "least" | "most" | "target" }>
>;
