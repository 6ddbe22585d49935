export { findStrip, type FoundStrip, type StripIssue } from "./find-strip";
export { type RgbaImage } from "./grey-image";
export { stripSentence } from "./sentences";
export {
  markerCorners,
  stripLayout,
  stripMarkerIds,
  type StripLayout,
  type StripRect,
  type StripText,
} from "./strip-layout";
