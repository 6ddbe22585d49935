export { axisFrame } from "./axis-frame";
export { fitEllipse, type Ellipse } from "./fit-ellipse";
export { fitLine, type FittedLine } from "./fit-line";
export {
  applyHomography,
  fitHomography,
  homographyJacobian,
  horizonSide,
  invertHomography,
  multiplyHomography,
  type Homography,
} from "./homography";
export { convexHull, greatestExtent } from "./hull";
export { type AnySpace, type Point } from "./point";
export { areaMoved, extentMoved, polylineMoved, wholeAgain, type OneMoved } from "./one-moved";
export { crossesItself, linesMeet, polygonArea, signedArea } from "./polygon";
export { distanceToPolyline, pointAlong, polylineLength, projectOnPolyline } from "./polyline";
export { add, angleDeg, centroidOf, cross, distance, dot, length, midpoint, subtract, times } from "./vector";
