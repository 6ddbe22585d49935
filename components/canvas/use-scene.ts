"use client";

import { useMemo } from "react";
import { palette } from "@/components/picture";
import { fitLabels, primitives, scene, type Primitive, type SceneShape } from "@/lib/marks";
import { selectionPicture } from "./draft-picture";
import { sectionScene } from "@/lib/report";
import { markInHand, shapesInHand } from "./preview";
import { withTags, type TagLevel } from "./tag-level";
import type { BeadCanvasProps } from "./types";
import type { Marking } from "./use-marking";

export interface ScenePictures {
  /** The drawing as it lies on the photo at this zoom: what is under a finger is asked of these. */
  readonly shapes: readonly SceneShape[];
  /** All but what the hand is holding. The same list as long as nothing in it changes: its layer is not painted anew. */
  readonly marks: readonly Primitive[];
  /** What the hand is holding, as it would be if it let go now. */
  readonly inHand: readonly Primitive[];
}

/** The drawing as primitives in photo pixels. `unitPx`: photo pixels per CSS pixel. */
export function useScene(
  props: BeadCanvasProps,
  marking: Marking,
  unitPx: number,
  tags: TagLevel,
): ScenePictures {
  const { photo, history, selectedId, sizeLabel, scaleLabel } = props;
  const { widthPx, heightPx } = photo;
  const { draft, preview } = marking;
  const drawing = history.present;
  const options = useMemo(
    () => ({ labels: sizeLabel, scaleLabel, widthPx }),
    [sizeLabel, scaleLabel, widthPx],
  );
  const section = props.section ?? null;
  const cut = section?.section ?? null;
  const places = section?.places ?? null;
  const whole = useMemo(
    () => [...(cut ? sectionScene(cut, places) : []), ...scene(drawing, options)],
    [drawing, options, cut, places],
  );
  const shapes = useMemo(
    () => fitLabels(withTags(whole, tags, selectedId), unitPx, selectedId, { widthPx, heightPx }),
    [whole, tags, unitPx, selectedId, widthPx, heightPx],
  );
  const held = shapesInHand(draft);
  const marks = useMemo(() => {
    const shown = shapes.filter((shape) => !held(shape));
    return [...selectionPicture(shown, selectedId, unitPx), ...painted(shown, unitPx)];
  }, [shapes, unitPx, selectedId, held]);
  const { sectionPreview } = marking;
  const now = () => [
    ...(sectionPreview ? sectionScene(sectionPreview, null) : []),
    ...scene(preview, { ...options, only: markInHand(draft) }),
  ];
  const moving = draft?.kind === "change" ? now().filter(held) : [];
  const inHand = painted(fitLabels(moving, unitPx, selectedId, { widthPx, heightPx }), unitPx);
  return { shapes, marks, inHand };
}

const painted = (shapes: readonly SceneShape[], unitPx: number): readonly Primitive[] =>
  shapes.flatMap((shape) => primitives(shape, palette, unitPx));
