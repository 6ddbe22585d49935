export { carriedBy, componentIds, studyFigures, type ReadingStudy } from "./figures";
export { placeCells, type SheetCell } from "./place-cells";
export { pastedCells, readCell, type CellUnit } from "./read-cells";
export { studyStanding } from "./standing";
export { GaugeStudySchema, studyLimits, type GaugeStudy } from "./study";
export { carriedText, componentNames, componentSentences, studySize, studyTable, studyWords } from "./words";
