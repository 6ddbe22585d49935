export { otherUnits } from "./both-units";
export { formatDuration } from "./format-duration";
export { formatLength, formatThickness, formatWireDiameter } from "./format-length";
export {
  formatAmps,
  formatAngle,
  formatFlow,
  formatTravelSpeed,
  formatVolts,
  formatWireFeed,
} from "./format-rates";
export { bareQuantity, formatQuantity, formatFigures } from "./format-quantity";
export { fieldText } from "./field-text";
export { inputText, type InputQuantity } from "./input-text";
export { type UnitsIssue } from "./issue";
export { parseDuration } from "./parse-duration";
export { parseLength } from "./parse-length";
export { parseOrUnknown } from "./parse-or-unknown";
export { parseAmps, parseAngle, parsePercent, parseVolts } from "./parse-plain";
export { parseFlow, parseTravelSpeed, parseWireFeed } from "./parse-rates";
export { parseWireDiameter } from "./parse-wire-diameter";
export { inch, lengthSystem, metric, type LengthSystem, type UnitPreferences } from "./preferences";
export { unitsSentence } from "./sentences";
export type { PrintedQuantity } from "./tables/rounding";
export { L_PER_MIN_PER_CFH, M_PER_MIN_PER_IPM, MM_PER_INCH } from "./tables/factors";
