import type { EaselState } from "@/components/canvas-kit";
import { ImperfectionPicker } from "./imperfection-picker";
import type { BeadCanvasProps } from "./types";
import type { Marking } from "./use-marking";
import { useSpotInSight } from "./use-picker-place";

/** Asks for the name of a shape that has just been drawn; closed without one, the shape is given up. */
export function ShapeNamer({
  marking,
  easel,
  offer,
  process,
}: Pick<BeadCanvasProps, "offer" | "process"> & { marking: Marking; easel: EaselState }) {
  const { draft } = marking;
  const shape = draft?.kind === "unnamed" ? draft.shape : null;
  const spot = useSpotInSight(shape, easel);
  return (
    <ImperfectionPicker
      open={shape !== null}
      onOpenChange={(open) => {
        if (!open) marking.cancel();
      }}
      current={null}
      onPick={marking.nameShape}
      {...{ offer, process, spot }}
      {...(shape ? { shape: shape.kind } : {})}
      onRepeat={marking.setRepeat}
      // The work goes on at the photo.
      onClosed={() => easel.boxRef.current?.focus({ preventScroll: true })}
    />
  );
}
