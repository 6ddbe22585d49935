import "server-only";

export { demoShop } from "./beads";
export { fillDemoShop } from "./fill-shop";
export { clearCutOff, countOriginals, FILLED, FilledSchema, fillWhole } from "./fill-whole";
