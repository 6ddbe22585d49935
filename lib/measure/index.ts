export { budgetLines } from "./budget";
export { calibrate } from "./calibrate";
export { differenceQuantity, sumQuantities } from "./combine";
export { expanded } from "./expanded";
export {
  HAND_SIGMA_MM,
  flatThroat,
  legOfThroat,
  solveFillet,
  throatOfLeg,
  type FilletSection,
} from "./fillet-section";
export { gaugeQuantity, statedQuantity } from "./gauge-quantity";
export { measureCaseJsonSchema } from "./json-schema";
export { measureCase, MeasureCaseSchema, type MeasureReport } from "./measure-case";
export { measureDrawing, measureMark, measureWeldLine } from "./measure-mark";
export { defaultMeasureOptions } from "./options";
export { beforeHorizon, mapPoint, mapPoints } from "./plane-map";
export { pickSigma, pickSigmas } from "./pick-sigma";
export { propagateAll } from "./propagate";
export {
  beadQuantities,
  beadQuantityRows,
  forEachQuantity,
  isJudgedName,
  judgedQuantities,
  quantityInText,
  quantityNamed,
  type BeadQuantity,
  type JudgedName,
  type JudgedQuantity,
} from "./quantities";
export { measureTables } from "./measure-tables";
export { measureSentence, measureSentences } from "./sentences";
export {
  QuantitySchema,
  type Calibrated,
  type Calibration,
  type MeasuredMark,
  type MeasureIssue,
  type MeasureIssueCode,
  type MeasureOptions,
  type PlanePoint,
  type Quantity,
} from "./types";
export { measureVocabulary } from "./vocabulary";
export { worstAmount, worstLength } from "./windows";
