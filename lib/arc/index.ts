export { ampsForFeed, extensionFromCtwdMm, feedForAmps, type AmpsEstimate, type Wire } from "./amps-for-feed";
export { arcTables } from "./arc-tables";
export { legFromFaceMm } from "./fillet";
export { legForRun, travelForLeg } from "./fillet-run";
export { arcEnergyKJPerMm } from "./heat-input";
export { onePassLimits, passesForLeg } from "./one-pass";
export { type Ranged } from "./ranged";
export { type WireKind } from "./tables/burn-off-rows";
export { heatFactors } from "./tables/heat-factors";
