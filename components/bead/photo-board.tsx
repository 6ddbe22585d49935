"use client";

import { useState } from "react";
import { BeadCanvas, scaleFromPicks, sizesAsked, type ScalePickKind, type Tool } from "@/components/canvas";
import type { Action, Mark, MarkShapeData, PhotoPoint, Scale } from "@/lib/marks";
import type { MeasuredMark } from "@/lib/measure";
import { markLabel, scaleText } from "@/lib/report";
import styles from "./photo-section.module.css";
import { ScaleDialog, type ScalePicks } from "./scale-dialog";
import { ScalePanel } from "./scale-panel";
import { shapeSize } from "./shape-size";
import type { BenchProps } from "./shared";
import type { WorkPhoto } from "./work-state";

/** One photo to mark on, and under it its scale: picked by hand, read off a strip, or taken away. */
export function PhotoBoard({
  photo,
  sizes,
  selectedId,
  onSelect,
  onAction,
  state,
  units,
  number,
}: Pick<BenchProps, "state" | "units"> & {
  photo: WorkPhoto;
  /** Of its marks, by id. */
  sizes: ReadonlyMap<string, MeasuredMark>;
  selectedId: string | null;
  onSelect: (id: string | null) => void;
  onAction: (action: Action) => void;
  number: number;
}) {
  const [tool, setTool] = useState<Tool>("move");
  const setScale = (scale: Scale | null) => {
    if (scale) onAction({ type: "scale.set", scale });
    setTool("move");
  };
  const picking = useScalePicking(setScale);
  const drawing = photo.history.present;
  return (
    <>
      <div className={styles.board}>
        <BeadCanvas
          photo={{
            viewUrl: `/api/photos/${photo.sha256}/view`,
            smallUrl: `/api/photos/${photo.sha256}/small`,
            widthPx: photo.widthPx,
            heightPx: photo.heightPx,
            name: `Photo ${state.photos.indexOf(photo) + 1} of bead ${number}`,
          }}
          history={photo.history}
          onAction={onAction}
          selectedId={selectedId}
          onSelect={onSelect}
          tool={tool}
          onToolChange={setTool}
          sizeLabel={(mark: Mark) => markLabel(mark, sizes.get(mark.id) ?? null, units)}
          shapeLabel={(shape: MarkShapeData) => shapeSize(drawing, shape, photo, units)}
          scaleLabel={scaleText(drawing.scale, units)}
          scaleKind={picking.kind}
          onScalePicked={picking.onPicked}
          onScaleCancelled={picking.drop}
          suggested={[...new Set(drawing.marks.map((one) => one.imperfection))]}
        />
      </div>
      <ScalePanel
        scale={drawing.scale}
        photo={photo}
        units={units}
        picking={tool === "scale"}
        kind={picking.kind}
        onKind={picking.setKind}
        onRemove={() => onAction({ type: "scale.clear" })}
        onFound={setScale}
        onCorrected={(scale) => onAction({ type: "scale.set", scale })}
      />
      <ScaleDialog picks={picking.picks} units={units} onClose={picking.drop} onSizes={picking.onSizes} />
    </>
  );
}

/** From picked points to a scale: at once where the sizes are known, else after they have been asked for. */
function useScalePicking(setScale: (scale: Scale | null) => void) {
  const [kind, setKind] = useState<ScalePickKind>("two-points");
  const [picks, setPicks] = useState<ScalePicks | null>(null);
  return {
    kind,
    setKind,
    picks,
    drop: () => setPicks(null),
    onPicked: (points: readonly PhotoPoint[]) => {
      if (sizesAsked[kind] === 0) setScale(scaleFromPicks(kind, points, []));
      else setPicks({ kind, points });
    },
    onSizes: (sizesMm: readonly number[]) => {
      if (!picks) return;
      setPicks(null);
      setScale(scaleFromPicks(picks.kind, picks.points, sizesMm));
    },
  };
}
