export { type DrawingAction, type EditAction, type MarkDescription } from "./action";
export { countAbout } from "./count-about";
export { countPoints, MOST_POINTS } from "./count-points";
export {
  DrawingSchema,
  emptyDrawing,
  gaugeQuantities,
  MarkSchema,
  MarkShapeSchema,
  PhotoPlaceSchema,
  PhotoPointSchema,
  ReadingStudySchema,
  ScaleSchema,
  type Drawing,
  type GaugeQuantity,
  type GaugeReading,
  type Mark,
  type MarkShapeData,
  type PhotoPoint,
  type Scale,
  type Toes,
  type TracedPoint,
} from "./drawing";
export { newMark } from "./edit-drawing";
export { advance, startHistory, stepBack, stepForward, type History } from "./history";
export { fitLabels } from "./fit-labels";
export { LETTER_WIDTH, offsetBy, primitives, type Primitive } from "./primitives";
export { reduce } from "./reduce";
export { mapScalePoints, scalePoints } from "./scale-points";
export { scene } from "./scene";
export { markStyle } from "./scene-mark";
export { scaleWords } from "./scene-guides";
export { groupStyles, type MarkGroup } from "./scene-style";
export { primitivesToSvg, sceneToSvg, type SvgNode } from "./scene-to-svg";
export {
  type SceneInk,
  type SceneLabel,
  type ScenePalette,
  type SceneShape,
  type Stroke,
} from "./scene-types";
export { fewestPoints, shapePoints } from "./shape-edit";
export { simplifyPath } from "./simplify-path";
export { warpDrawing } from "./warp-drawing";
