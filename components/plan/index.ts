export { PlanDesk } from "./plan-desk";
export { RunSheet } from "./run-sheet";
