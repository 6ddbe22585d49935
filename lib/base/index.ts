export { assertNever, invariant } from "./assert";
export { canonicalJson } from "./canonical-json";
export { issue, type Issue } from "./issue";
export { fail, ok, type Result } from "./result";
export { confidences, needsCheck, type Confidence, type Source } from "./source";
