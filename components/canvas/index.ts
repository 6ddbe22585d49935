export { BeadCanvas } from "./bead-canvas-client";
export { BudgetList } from "./budget-list";
export { ImperfectionPicker } from "./imperfection-picker";
export { MarkCard } from "./mark-card";
export { MarkList } from "./mark-list";
export { patternChoices, patternNames, placeChoices, stretchNames, type PlaceChoice } from "./mark-words";
export { palette } from "./palette";
export { CroppedPhoto, MarkOverlay, type MarkOverlayProps } from "./scene-svg";
export { scaleFromPicks, sizesAsked } from "./scale-from-picks";
export { scalePicks, type ScalePickKind } from "./scale-picks";
export {
  markTools,
  sectionMarkTools,
  sectionTools,
  tools,
  type SectionWork,
  type BeadCanvasProps,
  type CanvasPhoto,
  type ImperfectionPickerProps,
  type JointView,
  type MarkCardProps,
  type Tool,
} from "./types";
export { toolWords } from "./words";
