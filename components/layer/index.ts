export { LayerBoard, type LayerBoardProps } from "./layer-board";
export { LayeredPhoto } from "./layered-photo";
