export { inBothUnits, otherUnits } from "./both-units";
export { formatDuration } from "./format-duration";
export {
  formatLength,
  formatThickness,
  formatWireDiameter,
  lengthSystem,
  type LengthFormat,
  type LengthSystem,
} from "./format-length";
export {
  formatAmps,
  formatAngle,
  formatFlow,
  formatTravelSpeed,
  formatVolts,
  formatWireFeed,
} from "./format-rates";
export { inputText, type InputQuantity } from "./input-text";
export { unitsIssueCodes, type ParseOptions, type UnitsIssue, type UnitsIssueCode } from "./issue";
export { parseDuration } from "./parse-duration";
export { gaugeMm, parseLength, type ParseLengthOptions } from "./parse-length";
export { parseOrUnknown } from "./parse-or-unknown";
export { parseAmps, parseAngle, parsePercent, parseVolts } from "./parse-plain";
export { parseFlow, parseTravelSpeed, parseWireFeed } from "./parse-rates";
export { parseWireDiameter, wireSize } from "./parse-wire-diameter";
export {
  inch,
  metric,
  type FlowUnit,
  type LengthUnit,
  type TravelUnit,
  type UnitPreferences,
  type WireFeedUnit,
} from "./preferences";
export { unitsSentence, unitsSentences } from "./sentences";
export { stainlessGauges, steelGauges, type Gauge, type GaugeMetal, type GaugeTable } from "./tables/gauges";
export { wireSizes, wireSizesSource, type WireSize } from "./tables/wire-sizes";
export { L_PER_MIN_PER_CFH, M_PER_MIN_PER_IPM, MM_PER_INCH } from "./tables/factors";
