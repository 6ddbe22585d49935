import "server-only";

export { demoShop } from "./beads";
export { clearCutOff, countOriginals, FILLED, FilledSchema, fillWhole } from "./fill-whole";
