"use client";

import { useEffect } from "react";
import type { EaselState } from "@/components/canvas-kit";
import { useLater } from "@/components/ui";
import { overPhoto } from "./over-photo-code";
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
  const isAsked = shape !== null;
  const { boxRef } = easel;
  const here = useLater(overPhoto);
  useEffect(() => {
    // In hand before the browser had its rest: asked for now.
    if (isAsked) void overPhoto.load().catch(() => undefined);
  }, [isAsked]);
  // The work goes on at the photo: the next key may come before the picker has left the page.
  useEffect(() => {
    const board = isAsked ? boxRef.current : null;
    return () => board?.focus({ preventScroll: true });
  }, [isAsked, boxRef]);
  if (here === null) return null;
  return (
    <here.ImperfectionPicker
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
