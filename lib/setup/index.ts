export { checkSetup, factsOf } from "./check-setup";
export { currentAt, transferOf, wireOf } from "./current";
export { exampleSetups } from "./examples";
export {
  answersOf,
  answerWord,
  choiceFields,
  fieldInText,
  fieldLabel,
  fieldRow,
  filterableFields,
  filterName,
  formLines,
  parseReading,
  partFields,
  quantityOf,
  setupFieldNames,
  valueInText,
} from "./field-access";
export {
  setupFields,
  setupParts,
  type ChoiceField,
  type FilterableField,
  type NumberField,
  type TextField,
  type SetupField,
  type SetupFilterName,
  type SetupPart,
} from "./fields";
export { type SetupCode, type SetupFact, type SetupFinding, type Severity } from "./finding";
export {
  legAt,
  legOfPass,
  onePass,
  OUT_OF_POSITION_SHARE,
  plateAmps,
  rowCurves,
  isFirstLayer,
  travelByFace,
  voltsWithFeed,
} from "./forward";
export { isPositionOut } from "./position";
export { bisectingAngleDeg, HAND_TRAVEL } from "./rules-hand";
export { inputCap } from "./rules-input";
export { widestGapMm } from "./rules-plate";
export { emptyRunSetup, type RunSetup } from "./run-setup";
export { RunSetupSchema } from "./run-setup-schema";
export { findingDoubt, findingSentence, sourceDoubt, spanText } from "./sentences";
export { setupTables } from "./setup-tables";
export { showReading } from "./show-reading";
export { travelSpeed } from "./travel-speed";
export { usualWindow } from "./usual-windows";
export { usualForClass, type Usual } from "./usual";
export { electrodeOf, processMeant, windowFor, windowQueryFor } from "./window-for";
export { wordsInText } from "./words";
