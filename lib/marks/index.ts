export { type Action, type DrawingAction, type MarkDescription } from "./action";
export {
  DRAWING_VERSION,
  DrawingSchema,
  emptyDrawing,
  GaugeReadingSchema,
  gaugeQuantities,
  MarkSchema,
  MarkShapeSchema,
  MOST_MARKS,
  PhotoPointSchema,
  ScaleSchema,
  type Drawing,
  type GaugeQuantity,
  type GaugeReading,
  type Mark,
  type MarkShapeData,
  type Scale,
} from "./drawing";
export { newMark } from "./edit-drawing";
export { HISTORY_LIMIT, startHistory, type History } from "./history";
export { reduce } from "./reduce";
export {
  type SceneBadge,
  type SceneInk,
  type SceneLabel,
  type SceneLine,
  type SceneOutline,
  type SceneRing,
  type SceneRole,
  type SceneShape,
  type SceneSpot,
  type SceneTick,
  type Stroke,
} from "./scene-types";
export { fewestPoints, moveShapeBy, scaleShape, shapePoints } from "./shape-edit";
