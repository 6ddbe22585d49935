"use client";

import { useState } from "react";
import { photoRoles } from "@/lib/assess";
import { BeadNames } from "./bead-names";
import { BeadNote } from "./bead-note";
import { PhotoBoard } from "./photo-board";
import { PhotoDrop } from "./photo-drop";
import styles from "./photo-section.module.css";
import { PhotoStrip } from "./photo-strip";
import type { EarlyProps } from "./shared";

/** The photos of the bead: pick one, set its scale, mark what is there. */
export function PhotoSection(
  props: EarlyProps & { number: number | null; shownId: string | null; onShow: (id: string) => void },
) {
  const { beadId, state, dispatch, number, shownId, onShow } = props;
  const [selectedId, setSelectedId] = useState<string | null>(null);
  const photo = state.photos.find(({ id }) => id === shownId) ?? state.photos[0] ?? null;
  return (
    <div className={styles.stack}>
      <BeadNames state={state} dispatch={dispatch} number={number} />
      {photo && (
        <>
          <PhotoBoard {...props} photo={photo} selectedId={selectedId} onSelect={setSelectedId} />
          <PhotoStrip
            photos={state.photos}
            shownId={photo.id}
            roles={photoRoles}
            onShow={(id) => {
              onShow(id);
              setSelectedId(null);
            }}
            onRole={(photoId, role) => dispatch({ type: "photo.role", photoId, role })}
            onRemoved={(photoId) => dispatch({ type: "photo.remove", photoId })}
            beadId={beadId}
            kept={props.kept}
          />
        </>
      )}
      <PhotoDrop kept={props.kept} role="face" compact={photo !== null} />
      <BeadNote state={state} dispatch={dispatch} />
    </div>
  );
}
