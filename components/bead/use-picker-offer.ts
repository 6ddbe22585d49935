import { useMemo } from "react";
import type { PickerOffer } from "@/components/canvas";
import { likelyMarks } from "@/lib/diagnose";
import type { BenchProps } from "./shared";

/** What the picker offers first: what is marked on the bead, then what its causes, as they stand, would leave. */
export function usePickerOffer(
  { photos, setup }: BenchProps["state"],
  { diagnosis }: BenchProps["assessment"],
): PickerOffer {
  return useMemo(() => {
    const marks = photos.flatMap(({ history }) => history.present.marks);
    const onBead = [...new Set(marks.map(({ imperfection }) => imperfection))];
    let likely: PickerOffer["likely"] | null = null;
    return {
      onBead,
      // Ranked when somebody is asked for a name, not at every mark.
      get likely() {
        return (likely ??= diagnosis.ok ? likelyMarks(diagnosis.value.causes, setup.process) : []);
      },
    };
  }, [photos, diagnosis, setup.process]);
}
