export {
  advance,
  observed,
  trialState,
  type Advice,
  type CoursePoint,
  type TrialRun,
  type TrialState,
} from "./advance";
export { candidates } from "./candidates";
export { coded } from "./code";
export { contour } from "./contours";
export { effects, type Effect } from "./effects";
export { loss } from "./expected-improvement";
export { makeTrial, setupAt, type TrialAsk } from "./make-trial";
export type { TrialIssue } from "./issues";
export { responseRows, responsesOf, type BeadResponses } from "./responses";
export { adviceSentence, trialSentence, type ShowKnob } from "./sentences";
export { pureError } from "./scatter";
export { fitSurface, type Surface } from "./surface";
export {
  AimSchema,
  MOST_BEADS,
  responseNames,
  trialKnobs,
  TrialSchema,
  ways,
  type Aim,
  type ResponseName,
  type Trial,
  type TrialKnob,
  type Way,
} from "./trial";
