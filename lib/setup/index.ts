export { checkSetup } from "./check-setup";
export { exampleSetups, type ExampleSetup } from "./examples";
export {
  severities,
  setupCodes,
  type SetupCode,
  type SetupField,
  type SetupFinding,
  type Severity,
} from "./finding";
export { emptyRunSetup, RUN_SETUP_VERSION, RunSetupSchema, type RunSetup } from "./run-setup";
export {
  findingDoubt,
  findingSentence,
  readingNames,
  sourceDoubt,
  spanText,
  type ShowReading,
} from "./sentences";
export { setupTables } from "./setup-tables";
export { showReading } from "./show-reading";
export { timedTravelSpeed, travelSpeed, type TravelSpeed } from "./travel-speed";
export { usualForClass, type Usual, type UsualField } from "./usual";
export { electrodeOf, electrodesMeant, windowFor } from "./window-for";
