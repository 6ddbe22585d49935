export { budgetLines, budgetSentences, type BudgetLine } from "./budget";
export { calibrate } from "./calibrate";
export { differenceQuantity, sumQuantities, weakestSource } from "./combine";
export { expanded } from "./expanded";
export {
  measureAngle,
  measureArea,
  measureEqualCircle,
  measureExtent,
  measureLeastWidth,
  measureLength,
  measureSpot,
} from "./figures";
export { legFromThroat, legFromWidth, throatFromLeg, type FilletFromAbove } from "./fillet";
export {
  filletReadings,
  flatThroat,
  HAND_SIGMA_MM,
  legOfThroat,
  solveFillet,
  throatOfLeg,
  toeToToe,
  type FilletReading,
  type FilletReadings,
  type FilletSection,
} from "./fillet-section";
export { gaugeQuantity, statedQuantity, worstGaugeReading } from "./gauge-quantity";
export { knownSizes, type KnownSize } from "./known-sizes";
export { measureCaseJsonSchema } from "./json-schema";
export { measureCase, MeasureCaseSchema, type MeasureCase, type MeasureReport } from "./measure-case";
export { measureDrawing, measureMark, measureWeldLine } from "./measure-mark";
export { defaultMeasureOptions } from "./options";
export { beforeHorizon, localScales, mapPoint, mapPoints } from "./plane-map";
export { pickSigma, pickSigmas } from "./pick-sigma";
export { propagateAll, type Figures } from "./propagate";
export { scaleMiddle } from "./scale-model";
export {
  beadQuantities,
  beadQuantityRows,
  forEachQuantity,
  isJudgedName,
  judgedQuantities,
  quantityInText,
  quantityNamed,
  type BeadQuantity,
  type BeadQuantityRow,
  type JudgedName,
  type JudgedQuantity,
} from "./quantities";
export { measureRipples, type RippleMeasures } from "./ripples";
export { measureTables } from "./measure-tables";
export { measureSentence, measureSentences } from "./sentences";
export { measureStraightness, measureToes, type ToeMeasures } from "./toes";
export {
  budgetParts,
  QuantitySchema,
  readingSources,
  units,
  type BudgetPart,
  type BudgetPartName,
  type Calibration,
  type MeasuredMark,
  type MeasureIssue,
  type MeasureIssueCode,
  type MeasureOptions,
  type PlaneMap,
  type Quantity,
  type ReadingSource,
} from "./types";
export { measureVocabulary, type MeasureVocabulary } from "./vocabulary";
export {
  leastSpacing,
  worstAmount,
  worstCount,
  worstLength,
  type PlacedAmount,
  type StretchAlong,
  type WorstWindow,
} from "./windows";
