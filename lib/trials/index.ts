export { observed, trialState, type Advice, type CoursePoint, type TrialRun } from "./advance";
export { coded } from "./code";
export { contour } from "./contours";
export { effects } from "./effects";
export { makeTrial, setupAt, type TrialAsk } from "./make-trial";
export { offPoint } from "./off-point";
export { responseRows, responsesOf, type BeadResponses } from "./responses";
export { pureError } from "./scatter";
export { adviceSentence, trialSentence } from "./sentences";
export { fitSurface } from "./surface";
export {
  MOST_BEADS,
  responseNames,
  trialKnobs,
  TrialSchema,
  type Aim,
  type ResponseName,
  type Trial,
  type TrialKnob,
  type Way,
} from "./trial";
