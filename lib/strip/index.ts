export { findStrip, type FoundStrip, type StripIssue, type StripIssueCode } from "./find-strip";
export { type RgbaImage } from "./grey-image";
export { stripSentence, stripSentences } from "./sentences";
export {
  markerCorners,
  stripLayout,
  stripMarkerIds,
  type StripLayout,
  type StripRect,
  type StripText,
} from "./strip-layout";
