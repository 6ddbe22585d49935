export { ampsForFeed, extensionFromCtwdMm, feedForAmps, type AmpsEstimate, type Wire } from "./amps-for-feed";
export { arcTables } from "./arc-tables";
export { currentForFeed } from "./burn-off";
export { burnOffFor, type BurnOffModel } from "./burn-off-for";
export {
  depositAreaMm2,
  depositionFor,
  depositionKgPerH,
  depositOf,
  travelForAreaMmPerS,
  type Deposit,
} from "./deposition";
export { areaFromLegMm2, legFromAreaMm, legFromFaceMm } from "./fillet";
export {
  feedForLeg,
  legForRun,
  passAreaMm2,
  stringerWidthForRun,
  travelForLeg,
  type FilletRun,
} from "./fillet-run";
export { arcEnergyKJPerMm, heatInputKJPerMm } from "./heat-input";
export { onePassLimits, passesForLeg, type PassLimit } from "./one-pass";
export { type Ranged } from "./ranged";
export { type WireKind } from "./tables/burn-off-rows";
export { AREA_RELATIVE_ERROR } from "./tables/deposition-rows";
export { heatFactors } from "./tables/heat-factors";
