export { answerOf, inWords, linesOf, refused, type Answer, type Line, type Refusal } from "./answer";
export { assertNever, invariant } from "./assert";
export { canonicalJson } from "./canonical-json";
export { L_PER_CUBIC_FOOT, L_PER_MIN_PER_CFH, M_PER_MIN_PER_IPM, MM_PER_INCH } from "./conversion";
export { issue, type Issue } from "./issue";
export { MOST_JSON_BYTES, MOST_JSON_MB } from "./json-limit";
export { MAX_PHOTO_BYTES, MAX_PHOTO_MB } from "./photo-limit";
export { fail, ok, type Result } from "./result";
export { needsCheck, type Confidence, type Source } from "./source";
