export { beadProfile, type BeadProfile, type ProfileStation } from "./profile";
export { reader } from "./model";
export { traceSentence } from "./sentences";
export { STRIP } from "./strip-size";
export { stationsOf, toesOf } from "./toes";
export { traceBead } from "./trace-bead";
export type { Pixels, ReadStrip, Trace, TraceIssue } from "./types";
