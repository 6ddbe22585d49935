export { followEdge } from "./follow-edge";
export type { EdgeWindow, GreyPatch } from "./types";
export { windowFor } from "./window";
