"use client";

import { useEffect, useEffectEvent } from "react";
import type { EaselState } from "@/components/canvas-kit";
import { searchKey, stretchWanted, withStretch, type Stretch } from "./followed";
import type { Marking } from "./use-marking";

/** Looks for the edge up to the pointer, away from the screen's own thread; code and worker come with the first one. */
export function useFollowedEdges({ draft, follow, changeDraft }: Marking, easel: EaselState): void {
  const wanted = stretchWanted(draft, follow.on);
  const ask = searchKey(draft, follow.on);
  const look = useEffectEvent(() => {
    if (wanted === null) return;
    const tell = (corners: Stretch["corners"] | null) => {
      if (corners === null) return; // something newer is looked for
      follow.show({ ...wanted, corners });
      changeDraft((held) => withStretch(held, { ...wanted, corners }));
    };
    // Where nothing can be found, the line is straight.
    void import("./look-along").then(({ lookAlong }) => lookAlong(easel, wanted)).then(tell, () => tell([]));
  });
  useEffect(() => {
    if (ask !== null) look();
  }, [ask]);
}
