export { emptyRunSetup, RUN_SETUP_VERSION, RunSetupSchema, type RunSetup } from "./run-setup";
export { timedTravelSpeed, travelSpeed, type TravelSpeed } from "./travel-speed";
export { electrodeOf, windowFor } from "./window-for";
