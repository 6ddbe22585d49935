export { checkSetup } from "./check-setup";
export { exampleSetups, type ExampleSetup } from "./examples";
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
  numberFields,
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
  type SetupField,
  type SetupFieldRow,
  type SetupFilterName,
  type SetupPart,
} from "./fields";
export { severities, setupCodes, type SetupCode, type SetupFinding, type Severity } from "./finding";
export { emptyRunSetup, RUN_SETUP_VERSION, RunSetupSchema, type RunSetup } from "./run-setup";
export { findingDoubt, findingSentence, sourceDoubt, spanText, type ShowReading } from "./sentences";
export { setupTables } from "./setup-tables";
export { showReading } from "./show-reading";
export { timedTravelSpeed, travelSpeed, type TravelSpeed } from "./travel-speed";
export { usualForClass, type Usual, type UsualField } from "./usual";
export { electrodeOf, electrodesMeant, windowFor } from "./window-for";
export { inText, wordsInText } from "./words";
