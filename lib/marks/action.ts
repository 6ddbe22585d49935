import type { Point } from "@/lib/geometry";
import type { ImperfectionId } from "@/lib/trade";
import type { Drawing, Mark, MarkShapeData, PhotoPoint, Scale, Toes } from "./drawing";

/** What is said about a mark besides its shape and its name. */
export type MarkDescription = Pick<Mark, "place" | "stretch" | "patterns" | "note" | "gauge" | "aboutCount">;

/** One change to the drawing. Points are photo pixels of the upright original; ids come with the action. */
export type DrawingAction =
  | { readonly type: "mark.add"; readonly mark: Mark }
  | { readonly type: "mark.replaceShape"; readonly id: string; readonly shape: MarkShapeData }
  | { readonly type: "mark.movePoint"; readonly id: string; readonly index: number; readonly to: PhotoPoint }
  | { readonly type: "mark.moveBy"; readonly id: string; readonly by: Point<"photo"> }
  /** The new point gets this index; those from there on move up by one. */
  | {
      readonly type: "mark.insertPoint";
      readonly id: string;
      readonly index: number;
      readonly at: PhotoPoint;
    }
  | { readonly type: "mark.removePoint"; readonly id: string; readonly index: number }
  | { readonly type: "mark.setImperfection"; readonly id: string; readonly imperfection: ImperfectionId }
  | { readonly type: "mark.describe"; readonly id: string; readonly about: Partial<MarkDescription> }
  | { readonly type: "mark.remove"; readonly id: string }
  /** Several at once: one step back brings all of them back. Unknown ids are passed over. */
  | { readonly type: "marks.remove"; readonly ids: readonly string[] }
  | {
      readonly type: "marks.setImperfection";
      readonly ids: readonly string[];
      readonly imperfection: ImperfectionId;
    }
  | { readonly type: "scale.set"; readonly scale: Scale }
  | { readonly type: "scale.clear" }
  | { readonly type: "weldLine.set"; readonly points: readonly PhotoPoint[] }
  | { readonly type: "weldLine.clear" }
  | { readonly type: "toes.set"; readonly toes: Toes }
  | {
      readonly type: "toes.movePoint";
      readonly toe: "upper" | "lower";
      readonly index: number;
      readonly to: PhotoPoint;
    }
  | { readonly type: "toes.clear" };

/** What a person does to the drawing before them. */
export type EditAction = DrawingAction | { readonly type: "undo" } | { readonly type: "redo" };

export type Action<D extends Drawing = Drawing> =
  | EditAction
  /** Another drawing was opened: nothing of the old one can be undone into it. */
  | { readonly type: "load"; readonly drawing: D };
