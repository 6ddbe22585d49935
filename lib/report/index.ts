export { setupLine } from "./setup-rows";
export { cardSheet, cardWatchLines, type CardSheetDocument } from "./card-sheet";
export { settingsText, trialSheet, type TrialRunInput, type TrialSheetDocument } from "./trial-sheet";
export { changeText, settableChange } from "./amount-text";
export { answerWords, becauseLine, expectLine, type AnswerWords } from "./answer-words";
export { generalCautions } from "./caution-lines";
export { basisWords, otherCauseWords } from "./certainty-words";
export { originLines, reasonLine, reasonsOf } from "./reasons";
export { benchCard, type BenchCardDocument, type BenchSetting } from "./bench-card";
export {
  beadCard,
  summariseBead,
  summariseCard,
  type BeadCard,
  type BeadSummary,
  type NamedBead,
} from "./bead-summary";
export { compareSizes, type ComparedSize } from "./compare-sizes";
export { compareSheets, type ComparedMark, type Comparison } from "./compare-sheets";
export { dayText } from "./day-text";
export { gainWords } from "./gain-words";
export { lengthText } from "./length-text";
export { smallPhotoSentence } from "./small-photo";
export { looks, type Look } from "./look-words";
export { markAmountText, markLabel, scaleText, sizeText } from "./mark-text";
export { contradictionSentence } from "./contradiction-words";
export { notCarriedSentence } from "./not-carried-sentence";
export { codeUnitsOf, rowSentence, unusedSentence, type RowWords } from "./row-sentence";
export { rowLimitText, rowValueText } from "./row-text";
export { rulerTicks } from "./ruler";
export { type GunDrawing } from "./gun-drawings";
export { runSheet, type RunSheetDocument } from "./run-sheet";
export { shopFieldText, shopQuantityWords, shopRowText } from "./shop-row-text";
export { sectionClauses, sectionFigureRows, type SectionClause, type SectionFigureRow } from "./section-rows";
export { type PhotoCrop } from "./section-crop";
export { sectionScene } from "./section-scene";
export { sectionEdgeSteps, sectionEdgeWords } from "./section-edge-words";
export {
  sectionJointWords,
  sectionStepSentence,
  sectionVerdictWords,
  sectionWrittenFields,
} from "./section-words";
export { profileFigures, type ProfileFigures } from "./profile-figures";
export { acceptedProfile, isUneven, WIDTH_NOTE, widthRows } from "./width-rows";
export { setupRows, type LabelledRow } from "./setup-rows";
export { sheetDocument, type SheetBead, type SheetCause, type SheetDocument } from "./sheet";
export type { SheetSection } from "./sheet-section";
export { CHECK_YOUR_COPY } from "./check-your-copy";
export { seamWords, weldFactWords } from "./weld-fact-words";
export {
  missingSentences,
  missingWords,
  reasonWords,
  resultWords,
  verdictSays,
  verdictWords,
} from "./verdict-words";
export {
  confidenceWords,
  jointWords,
  outcomeWords,
  patternWords,
  placeWords,
  positionWords,
  processWords,
  stretchWords,
} from "./words";
