export { beadProfile, type BeadProfile, type ProfileStation } from "./profile";
export { finder, reader } from "./model";
export { proposeLine, type ProposedLine } from "./propose-line";
export { traceSentence } from "./sentences";
export { SQUARE } from "./square";
export { STRIP } from "./strip-size";
export { stationsOf, toesOf } from "./toes";
export { traceBead } from "./trace-bead";
export type { Pixels, ReadStrip, ReadWhole, Trace, TraceIssue } from "./types";
