export { emptyRunSetup, RUN_SETUP_VERSION, RunSetupSchema, type RunSetup } from "./run-setup";
