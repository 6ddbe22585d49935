"use client";

import type { Dispatch } from "react";
import { useKeptBead, type KeptBeadSaving } from "@/components/offline";
import type { BeadContent, PhotoFacts } from "@/lib/assess";
import { startWork, type WorkAction, type WorkState } from "./work-state";

/** The bead on this device, wired to the screen: what becomes known of it changes what is shown. */
export function useKeptWork(
  bead: Parameters<typeof useKeptBead>[0],
  content: BeadContent,
  state: WorkState,
  dispatch: Dispatch<WorkAction>,
  show: (photoId: string) => void,
): KeptBeadSaving {
  const isBlank = content.title === bead.content.title && bead.number === null;
  return useKeptBead(bead, content, factsOf(state), {
    onTakenUp: (taken, photos) => dispatch({ type: "replace", state: startWork(taken, photos) }),
    onMade: ({ title }) => {
      if (isBlank) dispatch({ type: "name", title });
    },
    onPhoto: (photo) => {
      dispatch({ type: "photo.add", photo });
      show(photo.id);
    },
    onPhotoTaken: (photo) => {
      dispatch({ type: "photo.stored", photo });
      if (!state.photos.some(({ id }) => id === photo.id)) show(photo.id);
    },
    onPhotoRefused: (photoId) => {
      // What somebody drew on it stays, with the reason beside it.
      const { marks = [], scale = null } =
        state.photos.find(({ id }) => id === photoId)?.history.present ?? {};
      if (marks.length > 0 || scale !== null) return false;
      dispatch({ type: "photo.remove", photoId });
      return true;
    },
  });
}

const factsOf = ({ photos }: WorkState): readonly PhotoFacts[] =>
  photos.map(({ id, sha256, widthPx, heightPx }) => ({ id, sha256, widthPx, heightPx }));
