export { LayerBoard } from "./layer-board";
export { LayeredPhoto } from "./layered-photo";
