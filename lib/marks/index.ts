export { type Action, type DrawingAction, type EditAction, type MarkDescription } from "./action";
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
  type PhotoPoint,
  type Scale,
} from "./drawing";
export { newMark } from "./edit-drawing";
export { advance, HISTORY_LIMIT, startHistory, type History } from "./history";
export { fitLabels } from "./fit-labels";
export {
  parseDrawing,
  parseDrawingText,
  serialiseDrawing,
  type DrawingIssue,
  type DrawingIssueCode,
} from "./parse-drawing";
export { primitives, type Primitive } from "./primitives";
export { reduce } from "./reduce";
export { mapScalePoints, scalePoints } from "./scale-points";
export { scene, type SceneOptions } from "./scene";
export { badgeWidth, markBody, markStyle, markTags } from "./scene-mark";
export { scaleWords } from "./scene-guides";
export { groupStyles, type GroupStyle, type MarkGroup } from "./scene-style";
export { sceneToSvg, type SvgNode, type SvgOptions } from "./scene-to-svg";
export {
  type InkColours,
  type SceneBadge,
  type SceneInk,
  type SceneLabel,
  type SceneLine,
  type SceneOutline,
  type ScenePalette,
  type SceneRing,
  type SceneRole,
  type SceneShape,
  type SceneSpot,
  type SceneTick,
  type Stroke,
} from "./scene-types";
export { fewestPoints, moveShapeBy, scaleShape, shapePoints } from "./shape-edit";
export { simplifyPath } from "./simplify-path";
export { warpDrawing } from "./warp-drawing";
