import { ImperfectionPicker } from "./imperfection-picker";
import type { BeadCanvasProps } from "./types";
import type { Marking } from "./use-marking";

/** Asks for the name of a shape that has just been drawn; closed without one, the shape is given up. */
export function ShapeNamer({
  marking,
  suggested,
  onClosed,
}: {
  marking: Marking;
  suggested: BeadCanvasProps["suggested"];
  /** Puts the focus where the work goes on. */
  onClosed: () => void;
}) {
  const { draft } = marking;
  return (
    <ImperfectionPicker
      open={draft?.kind === "unnamed"}
      onOpenChange={(open) => {
        if (!open) marking.cancel();
      }}
      current={null}
      onPick={marking.nameShape}
      {...(suggested ? { suggested } : {})}
      {...(draft?.kind === "unnamed" ? { shape: draft.shape.kind } : {})}
      onRepeat={marking.setRepeat}
      onClosed={onClosed}
    />
  );
}
