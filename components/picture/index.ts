export { EarlyPicture } from "./early-picture";
export { houseSign } from "./house-sign";
export { layerInk } from "./layer-ink";
export { highlight, palette } from "./palette";
export { CroppedPhoto, MarkOverlay, svgElements } from "./scene-svg";
export { svgText } from "./svg-text";
