export {
  electrodeFamilies,
  electrodePositions,
  type ElectrodeClass,
  type ElectrodeFamily,
} from "./electrode-class";
export { alongRows } from "./along-rows";
export { cite, commonPractice, fromMemory, ownEstimate, remark, titleOf, withoutDocument } from "./cite";
export { comesInNumbers } from "./comes-in-numbers";
export { findImperfections } from "./find-imperfection";
export { comesOf } from "./only-in-process";
export { electrodeClass, electrodeClassesFor, electrodeClassesNamed, positionsMeant } from "./electrodes";
export {
  crackIds,
  firstActs,
  imperfectionIds,
  imperfections,
  isoNumber,
  isoNumberText,
  patterns,
  places,
  stretches,
  type Finding,
  type Imperfection,
  type ImperfectionId,
  type Pattern,
  type Place,
  type Stretch,
} from "./imperfections";
export {
  gases,
  inputPowers,
  isFillet,
  isGasShielded,
  isSlagProcess,
  joints,
  polarities,
  positions,
  processes,
  progressions,
  travelDirections,
  type BaseMetal,
  type Gas,
  type InputPower,
  type Joint,
  type Polarity,
  type Position,
  type Process,
  type Progression,
  type Surface,
  type Transfer,
  type TravelDirection,
} from "./names";
export { ampsForThickness, AMPS_RULE_MAX_MM, feedCap, type FeedCap } from "./input-power";
export { sizesWithRows } from "./sizes-with-rows";
export { alsoUsedSource, electrodeClasses } from "./tables/electrode-classes";
export { documents, standings, type DocumentId } from "./tables/documents";
export { tellApart, type TellApart } from "./look-alikes";
export { appearances, type Appearance } from "./tables/look-alikes";
export { thicknessLimits } from "./thickness";
export { together } from "./together";
export { tradeTables } from "./trade-tables";
export { windowQuantities, type WindowQuantity, type WindowQuery } from "./placed-rows";
export { linesAtFeed, voltsAtFeed, windowLines } from "./window-lines";
export { isPublished, parameterWindow, type Band, type ParameterWindow } from "./windows";
export { trueWireSize } from "./wire-size";
