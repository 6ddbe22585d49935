"use client";

import { useEffect } from "react";
import type { EaselState } from "@/components/canvas-kit";
import { laterPart } from "@/components/ui";
import { canvasCode } from "./canvas-code";
import type * as CanvasLate from "./canvas-late";
import type { BeadCanvasProps, ImperfectionPickerProps } from "./types";
import type { Marking } from "./use-marking";
import { useSpotInSight } from "./use-picker-place";

const ImperfectionPicker = laterPart<typeof CanvasLate, ImperfectionPickerProps>(
  canvasCode,
  (late) => late.ImperfectionPicker,
);

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
  const isAsked = shape !== null;
  const { boxRef } = easel;
  // The work goes on at the photo: the next key may come before the picker has left the page.
  useEffect(() => {
    const board = isAsked ? boxRef.current : null;
    return () => board?.focus({ preventScroll: true });
  }, [isAsked, boxRef]);
  return (
    <ImperfectionPicker
      open={isAsked}
      onOpenChange={(open) => {
        if (!open) marking.cancel();
      }}
      current={null}
      onPick={marking.nameShape}
      {...{ offer, process, spot }}
      {...(shape ? { shape: shape.kind } : {})}
      onRepeat={marking.setRepeat}
      onClosed={() => boxRef.current?.focus({ preventScroll: true })}
    />
  );
}
