export { createCard } from "./card";
export { createDisc } from "./disc";
export { createRule } from "./rule";
export { createStrip } from "./strip";
export {
  createCoverTest,
  facetFrame,
  objectPlane,
  paintObject,
  placedPoint,
  type Placement,
} from "./place-object";
export { type ScaleObject } from "./scale-object";
