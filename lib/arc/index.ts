export { arcTables } from "./arc-tables";
export { currentForFeed } from "./burn-off";
export { burnOffFor, type BurnOffModel } from "./burn-off-for";
export { depositAreaMm2, depositionFor, travelForAreaMmPerS, type Deposit } from "./deposition";
export { areaFromLegMm2, legFromAreaMm, legFromFaceMm } from "./fillet";
export { arcEnergyKJPerMm } from "./heat-input";
export { type WireKind } from "./tables/burn-off-rows";
export { AREA_RELATIVE_ERROR } from "./tables/deposition-rows";
export { heatFactors } from "./tables/heat-factors";
