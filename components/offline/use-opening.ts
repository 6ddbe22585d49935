"use client";

import { useEffect } from "react";
import type { useRevision, Saved } from "@/components/saving";
import type { BeadContent } from "@/lib/assess";
import type { BeadKeeper } from "./bead-keeper";
import type { PageBead } from "./take-up";
import { goOn } from "./go-on";
import type { ScreenNews } from "./kept-saving";

interface Opened {
  readonly bead: PageBead;
  readonly keeper: BeadKeeper;
  readonly save: ReturnType<typeof useRevision<BeadContent, Saved>>;
  readonly news: { readonly current: ScreenNews };
}

/** Once, when the screen is shown: what this device holds of the bead comes on the screen and is sent. */
export function useOpening({ bead, keeper, save: { saver, flush }, news }: Opened): void {
  useEffect(() => {
    const opening = keeper.open(bead).then((opened) => {
      const { photos } = opened ?? bead;
      if (opened) goOn(opened, saver, news.current);
      const drawn = new Set(photos.map(({ id }) => id));
      for (const { id, role, size, refused } of keeper.state().photos)
        if (size && !refused && !drawn.has(id)) news.current.onPhoto({ id, sha256: "", ...size, role });
      if (keeper.unsent(true).photos > 0) saver.touch();
    });
    saver.wait(opening);
    // What was taken up comes with the next paint; only then is it known what there is to send.
    const soon = opening.then(() => setTimeout(() => void flush(), 0));
    return () => {
      void soon.then(clearTimeout);
      void flush().finally(() => keeper.close(saver.held()));
    };
    // eslint-disable-next-line react-hooks/exhaustive-deps -- once: later props of the page are older than the screen
  }, [keeper]);
}
