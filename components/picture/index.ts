export { layerInk } from "./layer-ink";
export { highlight, palette } from "./palette";
export { CroppedPhoto, MarkOverlay, svgElements, type MarkOverlayProps } from "./scene-svg";
