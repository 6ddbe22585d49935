export { BeadCanvas } from "./bead-canvas-client";
export { ShopGaugesProvider, gaugeLabel, useGauges, type Gauge } from "./gauges";
export { BudgetList } from "./budget-list";
export { ImperfectionPicker } from "./imperfection-picker";
export { MarkCard } from "./mark-card";
export { MarkList } from "./mark-list";
export { patternChoices, patternNames, placeChoices, stretchNames, type PlaceChoice } from "./mark-words";
export { scaleFromPicks, sizesAsked } from "./scale-from-picks";
export { scalePicks, type ScalePickKind } from "./scale-picks";
export {
  markTools,
  sectionMarkTools,
  sectionTools,
  tools,
  type SectionWork,
  type BeadCanvasProps,
  type ImperfectionPickerProps,
  type JointView,
  type MarkCardProps,
  type Tool,
} from "./types";
export { toolWords } from "./words";
