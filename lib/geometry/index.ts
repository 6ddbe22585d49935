export {
  applyHomography,
  fitHomography,
  homographyJacobian,
  horizonSide,
  identityHomography,
  invertHomography,
  multiplyHomography,
  type Homography,
} from "./homography";
export { type Point } from "./point";
