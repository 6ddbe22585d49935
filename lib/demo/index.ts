import "server-only";

export { demoShop } from "./beads";
export { clearDemoShop, demoToClear } from "./clear-demo";
export { clearCutOff, countOriginals, FILLED, FilledSchema, fillWhole } from "./fill-whole";
export { canGuide, guidedBead } from "./guided-bead";
export { isDemoThere } from "./shop-rows";
