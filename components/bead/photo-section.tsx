"use client";

import { useState } from "react";
import {
  BeadCanvas,
  MarkCard,
  scaleFromPicks,
  sizesAsked,
  ToolBar,
  type ScalePickKind,
  type Tool,
} from "@/components/canvas";
import type { Action, Mark, MarkShapeData, PhotoPoint } from "@/lib/marks";
import { markLabel, scaleText, sizeText } from "@/lib/report";
import { photoRoles } from "@/lib/assess";
import { PhotoDrop } from "./photo-drop";
import { PhotoStrip } from "./photo-strip";
import { ScaleDialog, type ScalePicks } from "./scale-dialog";
import { ScalePanel } from "./scale-panel";
import { BeadNames } from "./bead-names";
import type { BenchProps } from "./shared";
import { shapeSize } from "./shape-size";
import styles from "./photo-section.module.css";

/** The photos of the bead: pick one, set its scale, mark what is there. */
export function PhotoSection({
  beadId,
  state,
  dispatch,
  assessment,
  units,
  number,
}: BenchProps & { number: number }) {
  const [shownId, setShownId] = useState<string | null>(state.photos[0]?.id ?? null);
  const [selectedId, setSelectedId] = useState<string | null>(null);
  const [tool, setTool] = useState<Tool>("move");
  const [scaleKind, setScaleKind] = useState<ScalePickKind>("two-points");
  const [picks, setPicks] = useState<ScalePicks | null>(null);
  const photo = state.photos.find(({ id }) => id === shownId) ?? state.photos[0] ?? null;

  const drop = (compact: boolean) => (
    <PhotoDrop
      beadId={beadId}
      role="face"
      compact={compact}
      onUploaded={({ photo: added }) => {
        dispatch({ type: "photo.add", photo: added });
        setShownId(added.id);
      }}
    />
  );
  if (!photo) {
    return (
      <div className={styles.stack}>
        <BeadNames state={state} dispatch={dispatch} number={number} />
        {drop(false)}
      </div>
    );
  }

  const drawing = photo.history.present;
  const sizes = new Map(
    assessment.photos.find(({ photoId }) => photoId === photo.id)?.marks.map((one) => [one.id, one]),
  );
  const label = (mark: Mark) => markLabel(mark, sizes.get(mark.id) ?? null, units);
  const selected = drawing.marks.findIndex((mark) => mark.id === selectedId);
  const act = (action: Action) => dispatch({ type: "draw", photoId: photo.id, action });
  const mark = drawing.marks[selected];
  const setScale = ({ kind, points }: ScalePicks, sizesMm: readonly number[]) => {
    const scale = scaleFromPicks(kind, points, sizesMm);
    if (scale) act({ type: "scale.set", scale });
    setPicks(null);
    setTool("move");
  };
  const picked = (points: readonly PhotoPoint[]) => {
    if (sizesAsked[scaleKind] === 0) setScale({ kind: scaleKind, points }, []);
    else setPicks({ kind: scaleKind, points });
  };
  const suggested = [...new Set(drawing.marks.map((one) => one.imperfection))];

  return (
    <div className={styles.stack}>
      <BeadNames state={state} dispatch={dispatch} number={number} />
      <div className={styles.board}>
        <ToolBar
          tool={tool}
          onToolChange={setTool}
          canUndo={photo.history.past.length > 0}
          canRedo={photo.history.future.length > 0}
          onUndo={() => act({ type: "undo" })}
          onRedo={() => act({ type: "redo" })}
          hasScale={drawing.scale !== null}
          hasWeldLine={drawing.weldLine !== null}
        />
        <div className={styles.canvas}>
          <BeadCanvas
            key={photo.id}
            photo={{
              viewUrl: `/api/photos/${photo.sha256}/view`,
              smallUrl: `/api/photos/${photo.sha256}/small`,
              widthPx: photo.widthPx,
              heightPx: photo.heightPx,
              name: `Photo ${state.photos.indexOf(photo) + 1} of bead ${number}`,
            }}
            history={photo.history}
            onAction={act}
            selectedId={selectedId}
            onSelect={setSelectedId}
            tool={tool}
            onToolChange={setTool}
            sizeLabel={label}
            shapeLabel={(shape: MarkShapeData) => shapeSize(drawing, shape, photo, units)}
            scaleLabel={scaleText(drawing.scale, units)}
            scaleKind={scaleKind}
            onScalePicked={picked}
            onScaleCancelled={() => setPicks(null)}
            suggested={suggested}
          />
        </div>
      </div>
      <ScalePanel
        scale={drawing.scale}
        photo={photo}
        units={units}
        picking={tool === "scale"}
        kind={scaleKind}
        onKind={setScaleKind}
        onRemove={() => act({ type: "scale.clear" })}
        onFound={(scale) => {
          act({ type: "scale.set", scale });
          setTool("move");
        }}
      />
      {mark && (
        <MarkCard
          mark={mark}
          number={selected + 1}
          onAction={act}
          joint={state.setup.joint}
          position={state.setup.position}
          size={sizeText(sizes.get(mark.id) ?? null, units) || "no size yet"}
          units={units}
          onClose={() => setSelectedId(null)}
        />
      )}
      <PhotoStrip
        photos={state.photos}
        shownId={photo.id}
        roles={photoRoles}
        onShow={(id) => {
          setShownId(id);
          setSelectedId(null);
        }}
        onRole={(photoId, role) => dispatch({ type: "photo.role", photoId, role })}
        onRemoved={(photoId) => dispatch({ type: "photo.remove", photoId })}
        beadId={beadId}
      />
      {drop(true)}
      <ScaleDialog
        picks={picks}
        units={units}
        onClose={() => setPicks(null)}
        onSizes={(sizesMm) => {
          if (picks) setScale(picks, sizesMm);
        }}
      />
    </div>
  );
}
