export { arcTables } from "./arc-tables";
export { currentForFeed, currentPerExtension, feedForCurrent, type BurnOff } from "./burn-off";
export { burnOffFor, type BurnOffModel } from "./burn-off-for";
export {
  depositAreaMm2,
  depositionFor,
  linearMassKgPerM,
  meltOffKgPerH,
  stubEfficiency,
  travelForAreaMmPerS,
  wireAreaMm2,
  type Deposit,
} from "./deposition";
export {
  areaFromLegMm2,
  circularCapMm2,
  faceFromLegMm,
  legFromAreaMm,
  legFromFaceMm,
  parabolicCapMm2,
  throatFromLegMm,
} from "./fillet";
export {
  arcEnergyKJPerMm,
  heatInputKJPerMm,
  travelForEnergyMmPerS,
  travelMmPerMin,
  type ArcReadings,
} from "./heat-input";
export { burnOffRows, wireKinds, type BurnOffRow, type WireKind } from "./tables/burn-off-rows";
export {
  AREA_RELATIVE_ERROR,
  depositionRows,
  STEEL_KG_PER_MM3,
  STEEL_LB_PER_IN3,
  type DepositionRow,
} from "./tables/deposition-rows";
export { heatFactors, type HeatFactor } from "./tables/heat-factors";
