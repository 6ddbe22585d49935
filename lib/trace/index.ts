export { beadProfile, type BeadProfile, type ProfileStation, type TraceFigure } from "./profile";
export { reader } from "./model";
export { traceSentence } from "./sentences";
export { ANSWER_COLUMNS, ANSWER_ROWS, STRIP } from "./strip-size";
export { stationsOf, toesOf } from "./toes";
export { traceBead } from "./trace-bead";
export type { Pixels, ReadStrip, Trace, TraceIssue, TraceStation } from "./types";
