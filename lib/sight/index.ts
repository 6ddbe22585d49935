export { scaleOfSeen, stripScale, type ScaleOfSeen } from "./scale-of-seen";
export { seenScale, type SeenScale } from "./seen-scale";
export { seenSentence } from "./sentences";
