export { amountText, changeText, settableChange, valueText } from "./amount-text";
export { benchCard, type BenchCardDocument, type BenchSetting } from "./bench-card";
export { summariseBead, type BeadSummary, type SummarisableBead } from "./bead-summary";
export { compareSheets, type ComparedMark, type ComparedRow, type Comparison } from "./compare-sheets";
export { dayText } from "./day-text";
export { findingLines } from "./finding-lines";
export { lengthText, statedLengthText } from "./length-text";
export { looks, type Look } from "./look-words";
export { markLabel, markName, markPlace, scaleText, sizeText } from "./mark-text";
export { contradictionSentence } from "./contradiction-words";
export { figureWords, readingUnit, type MarkNumber } from "./reading-words";
export { codeUnitsOf, limitText, rowSentence, unusedSentence, type RowWords } from "./row-sentence";
export { rowLimitText, rowValueText } from "./row-text";
export { rulerTicks, type RulerTick } from "./ruler";
export { shopFieldText, shopQuantityWords, shopRowText, type ShopRowWords } from "./shop-row-text";
export {
  sectionClauses,
  sectionFigureRows,
  sectionFigureText,
  type SectionClause,
  type SectionFigureRow,
} from "./section-rows";
export { sectionCrop, type PhotoCrop } from "./section-crop";
export { sectionScene } from "./section-scene";
export {
  sectionEdgeSteps,
  sectionEdgeWords,
  sectionJointWords,
  sectionMissingText,
  sectionStepSentence,
  sectionVerdictWords,
  sectionWrittenFields,
} from "./section-words";
export { setupLine, setupRows, type LabelledRow } from "./setup-rows";
export { sheetDocument, type SheetBead, type SheetCause, type SheetDocument, type SheetMark } from "./sheet";
export type { SheetClause } from "./sheet-clause";
export type { SheetSection } from "./sheet-section";
export { CHECK_YOUR_COPY } from "./check-your-copy";
export { seamWords, weldFactWords } from "./weld-fact-words";
export {
  gaugeWords,
  missingSentences,
  missingWords,
  reasonWords,
  resultWords,
  verdictSays,
  verdictWords,
} from "./verdict-words";
export {
  cautionLines,
  chanceWords,
  confidenceWords,
  jointWords,
  outcomeWords,
  patternWords,
  placeWords,
  positionWords,
  processWords,
  stretchWords,
} from "./words";
