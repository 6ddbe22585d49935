import { useMemo } from "react";
import type { PickerOffer } from "@/components/canvas";
import type { EarlyProps } from "./shared";

/** What the picker offers first: what is marked on the bead, then what its causes, as they stand, would leave. */
export function usePickerOffer(
  { photos }: EarlyProps["state"],
  assessment: EarlyProps["assessment"],
): PickerOffer {
  return useMemo(() => {
    const marks = photos.flatMap(({ history }) => history.present.marks);
    const onBead = [...new Set(marks.map(({ imperfection }) => imperfection))];
    return {
      onBead,
      get likely() {
        return assessment.likely;
      },
    };
  }, [photos, assessment]);
}
