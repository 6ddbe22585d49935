"use client";

import { useState } from "react";
import { MarkCard, MarkList } from "@/components/canvas";
import { photoRoles } from "@/lib/assess";
import type { EditAction, Mark } from "@/lib/marks";
import { markAmountText } from "@/lib/report";
import { BeadNames } from "./bead-names";
import { BeadNote } from "./bead-note";
import { PhotoBoard } from "./photo-board";
import { PhotoDrop } from "./photo-drop";
import styles from "./photo-section.module.css";
import { PhotoStrip } from "./photo-strip";
import type { BenchProps } from "./shared";
import { usePickerOffer } from "./use-picker-offer";
import type { WorkPhoto } from "./work-state";

/** The photos of the bead: pick one, set its scale, mark what is there. */
export function PhotoSection(
  props: BenchProps & { number: number | null; shownId: string | null; onShow: (id: string) => void },
) {
  const { beadId, state, dispatch, number, shownId, onShow } = props;
  const [selectedId, setSelectedId] = useState<string | null>(null);
  const photo = state.photos.find(({ id }) => id === shownId) ?? state.photos[0] ?? null;
  return (
    <div className={styles.stack}>
      <BeadNames state={state} dispatch={dispatch} number={number} />
      {photo && (
        <>
          <ShownPhoto {...props} photo={photo} selectedId={selectedId} onSelect={setSelectedId} />
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

/** The photo on the board, the marks on it as a list, and all that is said about the one picked. */
function ShownPhoto({
  photo,
  selectedId,
  onSelect,
  ...props
}: BenchProps & {
  number: number | null;
  photo: WorkPhoto;
  selectedId: string | null;
  onSelect: (id: string | null) => void;
}) {
  const { state, dispatch, assessment, units } = props;
  const { marks } = photo.history.present;
  const measured = assessment.photos.find(({ photoId }) => photoId === photo.id)?.marks ?? [];
  const sizes = new Map(measured.map((one) => [one.id, one]));
  const sizeOf = (mark: Mark) => markAmountText(mark, sizes.get(mark.id) ?? null, units);
  const act = (action: EditAction) => dispatch({ type: "draw", photoId: photo.id, action });
  const selected = marks.findIndex((mark) => mark.id === selectedId);
  const mark = marks[selected];
  const offer = usePickerOffer(state, assessment);
  return (
    <>
      <PhotoBoard
        {...props}
        photo={photo}
        sizes={sizes}
        selectedId={selectedId}
        onSelect={onSelect}
        onAction={act}
        onSection={(action) => dispatch({ type: "section", photoId: photo.id, action })}
      />
      <MarkList {...{ marks, sizeOf, selectedId, onSelect }} onAction={act} />
      {mark && (
        <MarkCard
          mark={mark}
          number={selected + 1}
          onAction={act}
          joint={state.setup.joint}
          position={state.setup.position}
          size={sizeOf(mark) || "no size yet"}
          measured={sizes.get(mark.id) ?? null}
          offer={offer}
          process={state.setup.process}
          units={units}
          onClose={() => onSelect(null)}
        />
      )}
    </>
  );
}
